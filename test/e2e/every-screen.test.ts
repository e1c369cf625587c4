import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { CDPSession, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { BRITISH, foreignIn } from "../spellings.ts";
import { newViolations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { lostWords } from "./larger-text.ts";
import {
  cutTables,
  hiddenFocus,
  liveRegions,
  nextFrame,
  outOfOrder,
  smallTargets,
  unreadForced,
} from "./own-checks.ts";
import { DESK, field, firstVisit, openAll, openShade, PHONE } from "./planner.ts";

/** The tablet comes last: it shows what a desk or a phone does, and axe judges that once. */
const SIZES = [
  { size: "desk", viewport: DESK, isTouched: false },
  { size: "phone", viewport: PHONE, isTouched: true },
  { size: "tablet", viewport: { width: 820, height: 1180 }, isTouched: true },
] as const;
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
let clientLink = "";
let page: Page;
let own: Page;
beforeAll(async () => {
  harness = await startBrowser([], folder);
  ({ page: own } = await firstVisit(harness));
  await own.goto(`${harness.url}#/workroom`);
  await field(own, "Name of the workroom").fill("Workroom of the screens");
  await field(own, "Your name").fill("Olive");
  await field(own, "Name to sign in with").fill("olive");
  await own.getByLabel(/^New password/).fill("a sentence that is long enough");
  await own.getByRole("button", { name: "Make the workroom" }).click();
  await own.getByRole("button", { name: "I have written them down" }).click();
  await field(own, "Invite").fill("Cara");
  await own.getByRole("button", { name: "Make a link" }).click();
  joinLink = await own.getByRole("textbox", { name: /^Give this link/ }).inputValue();
  clientLink = await linkForClient();
  ({ page } = await firstVisit(harness));
});
afterAll(async () => {
  await harness.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The demonstration in the workroom, with prices of its own, and the link to show it to the client. */
async function linkForClient(): Promise<string> {
  const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
  if (!opened.ok) throw new Error("the demonstration does not open");
  const prices = Object.fromEntries(plan(opened.job).cost.shopping.map(({ id }) => [id, 7]));
  const job = { ...opened.job, id: "for-client", rates: { ...opened.job.rates, prices } };
  const token = await own.evaluate(async (sent) => {
    const ask = async (path: string, body: object) => {
      const headers = { "content-type": "application/json" };
      const answer = await fetch(path, { method: "POST", headers, body: JSON.stringify(body) });
      return (await answer.json()) as { token?: string };
    };
    await ask("/api/jobs", { request: crypto.randomUUID(), job: sent });
    return (await ask(`/api/jobs/${sent.id}/links`, {})).token;
  }, job);
  return `${harness.url}#/client/${token}`;
}

type Show = (page: Page) => Promise<void>;

const screens: Record<string, Show> = {
  shelf: async (page) => {
    await page.goto(`${harness.url}#/`);
    await page.locator(".shelf-elevation").first().waitFor();
  },
  job: async (page) => {
    await page.goto(`${harness.url}#/job/lantern-row`);
    await page.locator(".elevation-window").first().waitFor();
    await openAll(page);
    await page.locator(".bolt").first().waitFor();
    await openAll(page);
  },
  shade: async (page) => {
    await openShade(page, harness.url, "kitchen-sink");
    await openAll(page);
    await page.locator(".fig").first().click();
  },
  "shade, from the back": async (page) => {
    await openShade(page, harness.url, "studio-north");
    await openAll(page);
    await page.getByRole("tab", { name: "Back" }).click();
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
  "a client’s": async (page) => {
    await page.goto(clientLink);
    await page.getByRole("heading", { name: "Number 3, Lantern Row" }).waitFor();
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

/** Says to a page under way that it is touched by a finger, or by a mouse. */
async function setTouched(cdp: CDPSession, enabled: boolean): Promise<void> {
  await cdp.send("Emulation.setTouchEmulationEnabled", {
    enabled,
    ...(enabled ? { maxTouchPoints: 1 } : {}),
  });
}

/** What is wrong with a screen as it stands open, on every device and in all colours. */
async function faults(page: Page): Promise<string[]> {
  const found: string[] = [];
  const cdp = await page.context().newCDPSession(page);
  for (const { size, viewport, isTouched } of SIZES) {
    await page.setViewportSize(viewport);
    await setTouched(cdp, isTouched);
    await nextFrame(page);
    expect(await page.evaluate(() => matchMedia("(pointer: coarse)").matches)).toBe(isTouched);
    for (const [colour, media] of COLOURS) {
      await page.emulateMedia(media);
      const say = (all: string[]) => found.push(...all.map((one) => `${size}, ${colour}: ${one}`));
      say(await hiddenFocus(page, STOPS));
      // Forced colours are the reader's own.
      if (colour === "forced colours") say(await unreadForced(page));
      else say(await newViolations(page, colour, colour === "light"));
    }
    await page.emulateMedia(COLOURS[0][1]);
    const say = (all: string[]) => found.push(...all.map((one) => `${size}: ${one}`));
    say(await smallTargets(page, isTouched ? 44 : 24));
    say(await outOfOrder(page));
    say(await cutTables(page));
    if ((await liveRegions(page)) === 0) say(["nothing could say what has changed"]);
    say(await lostWords(page));
  }
  await setTouched(cdp, false);
  await page.setViewportSize(DESK);
  await cdp.detach();
  return found;
}

/** All that is read on a screen or heard from it; what can be typed over is the maker’s. */
function said(page: Page): Promise<string> {
  return page.evaluate((heard) => {
    const parts = [document.title, document.body.textContent];
    for (const name of heard)
      for (const element of document.querySelectorAll(`[${name}]`))
        parts.push(element.getAttribute(name) ?? "");
    return parts.join("\n");
  }, HEARD);
}

const HEARD = ["alt", "aria-label", "aria-description", "aria-valuetext", "placeholder", "title"];

test.each([...Object.entries(screens), ...Object.entries(ofOwner)])(
  "the screen “%s” can be seen, pressed and read in its order on every device and in all colours, in the words of its place",
  async (name, show) => {
    const at = name in ofOwner ? own : page;
    await show(at);
    // The demonstration hangs in the United States and is measured in inches.
    const words = await said(at);
    expect(foreignIn(words, BRITISH)).toEqual([]);
    if (/job|shade/.test(name)) expect(words).toMatch(/\bfabric\b/);
    expect(await faults(at)).toEqual([]);
  },
);
