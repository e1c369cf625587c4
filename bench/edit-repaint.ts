import type { Page } from "playwright-core";
import type { Harness } from "../test/e2e/browser.ts";
import { type Figure, quantile } from "./figure.ts";
import { untilUsable } from "./usable.ts";

/** The planner measures each edit from its event until the frame that shows it is painted. */
const REPAINT = "shadewright:repaint";
const EDITS = 80;
const WARM = 20;

/** A keystroke in the width of a shade of the demonstration job, until all its drawings are painted anew. */
export async function editRepaint(harness: Harness): Promise<Figure> {
  const { page } = await harness.open({ viewport: { width: 1440, height: 900 } });
  await page.goto(harness.url);
  await untilUsable(page);
  await openFirstShade(page);
  await edit(page, WARM);
  await page.evaluate((name) => performance.clearMeasures(name), REPAINT);
  await edit(page, EDITS);
  const samples = await page.evaluate(
    (name) => performance.getEntriesByName(name, "measure").map(({ duration }) => duration),
    REPAINT,
  );
  await page.context().close();
  if (samples.length < EDITS) throw new Error(`invalid run: ${samples.length} repaints of ${EDITS} edits`);
  return { name: "edit.repaint", value: quantile(samples, 0.95), unit: "ms", goal: 8, better: "lower" };
}

async function openFirstShade(page: Page): Promise<void> {
  await page.locator(".shelf-job-link").first().click();
  await page.locator(".elevation-window").first().click();
  await page.getByRole("textbox", { name: FIELD, exact: true }).waitFor();
}

const FIELD = "Width in the middle";

/** Types one width after the other, each a little wider or narrower, and waits for each to be painted. */
async function edit(page: Page, times: number): Promise<void> {
  const field = page.getByRole("textbox", { name: FIELD, exact: true });
  for (let n = 0; n < times; n++) {
    const before = await repaints(page);
    await field.fill(`35 ${1 + (n % 15)}/16`);
    await page.waitForFunction(([name, count]) => performance.getEntriesByName(name).length > count, [
      REPAINT,
      before,
    ] as const);
  }
}

function repaints(page: Page): Promise<number> {
  return page.evaluate((name) => performance.getEntriesByName(name, "measure").length, REPAINT);
}
