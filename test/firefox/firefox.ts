import { mkdtempSync, readdirSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, firefox, type Locator, type Page } from "playwright-core";
import { WEB } from "../../scripts/build-web.mjs";
import { findFirefox, HOW_TO_GET_FIREFOX } from "../../scripts/firefox.mjs";
import { serve } from "../../src/server/index.ts";
import type { Harness } from "../e2e/browser.ts";

/** Ends what hangs, on a machine many times slower. */
const HANGS_MS = 120_000;

export const isThere = findFirefox() !== undefined;
if (!isThere) console.warn(`LEFT OUT: no Firefox; to try the planner in it, ${HOW_TO_GET_FIREFOX}.`);

/** What the driver keeps inside, as far as is needed here. */
interface Session {
  send(method: string, params?: object): Promise<unknown>;
}
interface Driver {
  _connection: { toImpl(browser: Browser): { _browserSession: Session } };
}

/**
 * Starts this machine's own Firefox, spoken to in WebDriver BiDi, and a server of the built planner. Close both with
 * `close`.
 */
export async function startFirefox(): Promise<Harness & { downloads: Downloads }> {
  const executablePath = findFirefox();
  if (executablePath === undefined) throw new Error(`no Firefox: ${HOW_TO_GET_FIREFOX}`);
  const serving = await serve({ planner: WEB, port: 0 });
  // The channel is what makes the driver speak BiDi; its own protocol needs a Firefox of its own.
  const downloadsPath = mkdtempSync(join(tmpdir(), "shadewright-firefox-"));
  const browser = await firefox.launch({
    channel: "moz-firefox",
    executablePath,
    headless: true,
    downloadsPath,
  });
  // A Firefox of long support does not know this wish yet, and every page would fail for it.
  const session = (browser as unknown as Driver)._connection.toImpl(browser)._browserSession;
  const send = session.send.bind(session);
  session.send = async (method, params) =>
    method === "emulation.setMediaFeaturesOverride" ? {} : send(method, params);
  return {
    browser,
    url: serving.url,
    downloads: new Downloads(downloadsPath),
    async open(options = {}) {
      const context = await browser.newContext({ acceptDownloads: true, ...options });
      context.setDefaultTimeout(HANGS_MS);
      const page = await context.newPage();
      const errors: string[] = [];
      page.on("pageerror", (error) => errors.push(error.message));
      page.on("console", (message) => {
        // A font on its way when the page is left is not a fault of the page.
        if (message.type() === "error" && !/^download failed \(font/.test(message.text()))
          errors.push(message.text());
      });
      return { page, errors };
    },
    async close() {
      await browser.close();
      await serving.close();
      rmSync(downloadsPath, { recursive: true, force: true });
    },
  };
}

/** The folder of what was downloaded: this driver tells nobody of a file that the page made itself. */
class Downloads {
  private readonly folder: string;

  constructor(folder: string) {
    this.folder = folder;
  }

  /** What comes once a button is pressed. */
  async after(press: () => Promise<void>): Promise<{ path(): Promise<string> }> {
    const before = new Set(readdirSync(this.folder));
    await press();
    for (let tries = 0; tries < HANGS_MS / 100; tries++) {
      await new Promise((done) => setTimeout(done, 100));
      const all = readdirSync(this.folder);
      const name = all.find((one) => !before.has(one) && !one.endsWith(".part"));
      // While a file is written its parts stand beside it.
      const isWhole = !all.some((one) => one.endsWith(".part"));
      if (name !== undefined && isWhole && statSync(join(this.folder, name)).size > 0)
        return { path: async () => join(this.folder, name) };
    }
    throw new Error("nothing was downloaded");
  }
}

/** Types with keys in the place of what stands there: text that this driver fills in never reaches the page's code. */
export async function type(page: Page, into: Locator, text: string): Promise<void> {
  await into.click();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(text);
}
