import type { Page } from "playwright-core";
import type { Harness } from "../test/e2e/browser.ts";
import type { Figure } from "./figure.ts";
import { p95, repaintsOf, repaintsOnProcessor } from "./repaints.ts";
import { replayEdits } from "./replayed-edits.ts";
import { untilUsable } from "./usable.ts";

const FIELD = "Width in the middle";

/** So many times slower than this machine is one on which it must still be usable. */
const SLOWED = 4;
const GOAL_MS = 8;

/**
 * A keystroke in the width of a shade of the demonstration job, until all its drawings are painted anew, in time that
 * the page's thread worked; and the same where the processor is slowed.
 */
export async function editRepaint(harness: Harness): Promise<Figure[]> {
  const { page } = await harness.open({ viewport: { width: 1440, height: 900 } });
  await page.goto(harness.url);
  await untilUsable(page);
  await openFirstShade(page);
  const field = page.getByRole("textbox", { name: FIELD, exact: true });
  // One width after the other, each a little wider or narrower.
  const edit = (n: number) => field.fill(`35 ${1 + (n % 15)}/16`);
  const value = p95(await repaintsOnProcessor(page, edit, { warm: 20, times: 80 }));
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  const slowed = p95(await repaintsOnProcessor(page, edit, { warm: 5, times: 40 }));
  await page.context().close();
  return [
    { name: "edit.repaint", value, unit: "ms", goal: GOAL_MS, better: "lower" },
    { name: `edit.repaint.${SLOWED}x`, value: slowed, unit: "ms", goal: SLOWED * GOAL_MS, better: "lower" },
  ];
}

/**
 * What of that is the browser's own: the same changes of the page for two widths in turn, with no code of the planner. No
 * planner with this page is quicker.
 */
export async function editRepaintBrowser(harness: Harness): Promise<Figure> {
  const { page } = await harness.open({ viewport: { width: 1440, height: 900 } });
  await page.goto(harness.url);
  await untilUsable(page);
  await openFirstShade(page);
  const field = page.getByRole("textbox", { name: FIELD, exact: true });
  const edit = (n: number) => field.fill(n % 2 === 0 ? "35 9/16" : "35 3/16");
  await repaintsOf(page, edit, { warm: 0, times: 10 });
  await replayEdits(page, edit);
  const value = p95(await repaintsOnProcessor(page, edit, { warm: 20, times: 80 }));
  await page.context().close();
  return { name: "edit.repaint.browser", value, unit: "ms", goal: GOAL_MS, better: "lower" };
}

async function openFirstShade(page: Page): Promise<void> {
  await page.locator(".shelf-job-link").first().click();
  await page.locator(".elevation-window").first().click();
  await page.getByRole("textbox", { name: FIELD, exact: true }).waitFor();
}
