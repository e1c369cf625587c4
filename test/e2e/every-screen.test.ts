import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { violations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { lostWords } from "./larger-text.ts";
import { hiddenFocus, liveRegions, outOfOrder, smallTargets } from "./own-checks.ts";
import { DESK, field, firstVisit, openAll, openShade, sectionTitle } from "./planner.ts";

const SIZES = [["a desk", { viewport: DESK }]] as const;
const COLOURS = [
  ["light", { colorScheme: "light", forcedColors: null }],
  ["dark", { colorScheme: "dark", forcedColors: null }],
  ["forced colours", { colorScheme: "light", forcedColors: "active" }],
] as const;
/** Stops of the tab key that are looked at on each screen, in each colour. */
const STOPS = 8;

const folder = mkdtempSync(join(tmpdir(), "every-screen-"));
let harness: Harness;
let joinLink = "";
let owner: BrowserContext;
beforeAll(async () => {
  harness = await startBrowser([], folder);
  const { page } = await firstVisit(harness);
  owner = page.context();
  await page.goto(`${harness.url}#/workroom`);
  await field(page, "Name of the workroom").fill("Workroom of the screens");
  await field(page, "Your name").fill("Olive");
  await field(page, "Name to sign in with").fill("olive");
  await page.getByLabel(/^New password/).fill("a sentence that is long enough");
  await page.getByRole("button", { name: "Make the workroom" }).click();
  await page.getByRole("button", { name: "I have written them down" }).click();
  await field(page, "Invite").fill("Cara");
  await page.getByRole("button", { name: "Make a link" }).click();
  joinLink = await page.getByRole("textbox", { name: /^Give this link/ }).inputValue();
});
afterAll(async () => {
  await harness.close();
  rmSync(folder, { recursive: true, force: true });
});

type Show = (page: Page) => Promise<void>;

const screens: Record<string, Show> = {
  shelf: async (page) => {
    await page.goto(`${harness.url}#/`);
    await page.locator(".shelf-elevation").first().waitFor();
  },
  job: async (page) => {
    await page.goto(`${harness.url}#/job/lantern-row`);
    await page.locator(".elevation-window").first().waitFor();
  },
  cutting: async (page) => {
    await page.goto(`${harness.url}#/job/lantern-row`);
    const title = sectionTitle(page, "cutting");
    await title.waitFor();
    if ((await title.getAttribute("aria-expanded")) === "false") await title.click();
    await page.locator(".bolt-svg").first().waitFor();
  },
  shade: async (page) => {
    await openShade(page, harness.url, "kitchen-sink");
    await openAll(page);
  },
  bench: async (page) => {
    await page.goto(`${harness.url}#/job/lantern-row/parlour-left/bench`);
    await page.locator(".bench-step").waitFor();
  },
  ask: async (page) => {
    await page.goto(`${harness.url}#/ask`);
    await page.getByRole("textbox", { name: "Your question, in your own words" }).fill("my cord slips");
    await page.locator('.ask-answer[data-question="lock-slips"]').waitFor();
  },
  "parts bench": async (page) => {
    await page.goto(`${harness.url}#/parts`);
    const list = page.locator("#bench-locks");
    await list.waitFor();
    if ((await list.getAttribute("open")) === null) await list.locator("> summary").click();
    if ((await list.locator(".part-card").count()) === 0)
      await page.getByRole("button", { name: "Lay out a lock" }).click();
    await page.locator(".fit-table").waitFor();
  },
  "way in": async (page) => {
    await page.goto(`${harness.url}#/workroom`);
    await page.getByRole("button", { name: "Sign in", exact: true }).first().waitFor();
  },
  join: async (page) => {
    await page.goto(joinLink);
    await page.getByRole("button", { name: "Join", exact: true }).waitFor();
  },
  "a client’s link that is no good": async (page) => {
    await page.goto(`${harness.url}#/client/nothing`);
    await page.locator("main h1").waitFor();
  },
  "nothing here": async (page) => {
    await page.goto(`${harness.url}#/nowhere`);
    await page.getByRole("heading", { name: "There is nothing here" }).waitFor();
  },
};

/** What only the owner of the workroom sees. */
const ofOwner: Record<string, Show> = {
  workroom: async (page) => {
    await page.goto(`${harness.url}#/workroom`);
    await page.getByRole("heading", { name: "Workroom of the screens" }).waitFor();
  },
  shop: async (page) => {
    await page.goto(`${harness.url}#/job/shop`);
    await page.getByRole("heading", { name: /^Shop of/ }).waitFor();
    await openAll(page);
  },
};

interface Size {
  viewport: { width: number; height: number };
  hasTouch?: boolean;
}

async function faults(page: Page, { viewport, hasTouch = false }: Size): Promise<string[]> {
  const found: string[] = [];
  for (const [colour, media] of COLOURS) {
    await page.emulateMedia(media);
    const say = (all: string[]) => found.push(...all.map((one) => `${colour}: ${one}`));
    say(await hiddenFocus(page, STOPS));
    if (colour !== "forced colours") say(await violations(page));
  }
  await page.emulateMedia(COLOURS[0][1]);
  found.push(...(await smallTargets(page, hasTouch ? 44 : 24)));
  found.push(...(await outOfOrder(page)));
  if ((await liveRegions(page)) === 0) found.push("nothing could say what has changed");
  found.push(...(await lostWords(page, viewport.width >= 768)));
  return found;
}

describe.each(SIZES)("on %s, in light, dark and forced colours", (_size, options) => {
  let page: Page;
  let own: Page;
  beforeAll(async () => {
    ({ page } = await firstVisit(harness, options));
    // The owner's own browser, at another size: a finger is another device, which is not signed in.
    const state = await owner.storageState();
    ({ page: own } = await firstVisit(harness, { ...options, storageState: state }));
  });
  afterAll(async () => {
    await page.context().close();
    await own.context().close();
  });

  test.each(Object.entries(screens))(
    "the screen “%s” can be seen, pressed and read in its order",
    async (_, show) => {
      await show(page);
      expect(await faults(page, options)).toEqual([]);
    },
  );

  test.each(Object.entries(ofOwner))(
    "the screen “%s” can be seen, pressed and read in its order",
    async (_, show) => {
      await show(own);
      expect(await faults(own, options)).toEqual([]);
    },
  );
});
