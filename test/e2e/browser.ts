import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { WEB } from "../../scripts/build-web.mjs";
import { findChromium } from "../../scripts/chromium.mjs";
import { roomDoor, serve } from "../../src/server/index.ts";

/** Nothing that speaks to the network by itself, and no need of a graphics card. */
const FLAGS = [
  "--headless",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** WebGL 2 drawn by the processor alone. */
export const SOFTWARE_GL = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader"];

/** Ends what hangs, on a machine many times slower and with another test beside this one. */
const HANGS_MS = 180_000;

export interface OpenPage {
  page: Page;
  /** Errors of the page and what it wrote to the console as an error, in order. */
  errors: string[];
}

export interface Harness {
  browser: Browser;
  /** Where the built planner is served, with a slash at the end. */
  url: string;
  /** A page in a profile of its own, so that no test sees another's stored jobs. */
  open(options?: BrowserContextOptions): Promise<OpenPage>;
  close(): Promise<void>;
}

/**
 * Starts Chromium and a server of the built planner on a free port. Close both with `close`.
 * @param roomFolder where the workroom beside it keeps its database; without one the planner is alone
 */
export async function startBrowser(more: readonly string[] = [], roomFolder?: string): Promise<Harness> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error("no Chromium: install it, or name yours in CHROMIUM");
  const serving = await serve({
    planner: WEB,
    port: 0,
    ...(roomFolder === undefined ? {} : { door: roomDoor(roomFolder) }),
  });
  const sandbox = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  const browser = await chromium.launch({ executablePath, args: [...FLAGS, ...sandbox, ...more] });
  return {
    browser,
    url: serving.url,
    async open(options = {}) {
      const context = await browser.newContext({ acceptDownloads: true, ...options });
      context.setDefaultTimeout(HANGS_MS);
      const page = await context.newPage();
      return { page, errors: collectErrors(page) };
    },
    async close() {
      await browser.close();
      await serving.close();
    },
  };
}

function collectErrors(page: Page): string[] {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  return errors;
}
