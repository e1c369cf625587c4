import type { Page } from "playwright-core";
import type { Harness } from "../test/e2e/browser.ts";
import { type Figure, median } from "./figure.ts";
import { jobOf } from "./many-windows.ts";
import { pageWithJob } from "./open-job.ts";
import { p95, repaintsOf, repaintsOnProcessor } from "./repaints.ts";

/** A house, which a contract is held against. */
const HOUSE = 6;

/**
 * A job of so many windows: from its link on the shelf until its windows stand there, and an edit on its page until the
 * frame that shows it, in time that the page's thread worked; by the clock, in the middle of many, beside the same edit in a house.
 */
export async function jobOfMany(harness: Harness, windows: number): Promise<Figure[]> {
  const { page, openMs } = await opened(harness, windows);
  const edit = await editOf(page);
  const byClock = median(await repaintsOf(page, edit, { warm: 10, times: 50 }));
  const value = p95(await repaintsOnProcessor(page, edit, { warm: 0, times: 50 }));
  await page.context().close();
  const house = await opened(harness, HOUSE);
  const inHouse = median(await repaintsOf(house.page, await editOf(house.page), { warm: 10, times: 50 }));
  await house.page.context().close();
  return [
    { name: `job.open.${windows}`, value: openMs / 1000, unit: "s", goal: 1.5, better: "lower" },
    { name: `job.edit.${windows}`, value, unit: "ms", goal: 16, better: "lower" },
    {
      name: `job.edit.vs-house.${windows}`,
      value: byClock / inHouse,
      ...{ unit: "× by the clock", goal: 1.5, better: "lower" },
      peer: `the same edit in a job of ${HOUSE} windows, ${inHouse.toFixed(1)} ms`,
    },
  ];
}

async function opened(harness: Harness, windows: number): Promise<{ page: Page; openMs: number }> {
  const page = await pageWithJob(harness, jobOf(windows));
  // The planner that the file brought along is another after a reload: what is measured is a first opening.
  await page.reload();
  const link = page.locator('.shelf-job-link[href$="bench"]');
  await link.waitFor();
  const openMs = await link.evaluate(async (one) => {
    const start = performance.now();
    (one as HTMLElement).click();
    while (document.querySelector(".elevation-window") === null)
      await new Promise((resolve) => requestAnimationFrame(resolve));
    return performance.now() - start;
  });
  return { page, openMs };
}

async function editOf(page: Page): Promise<(n: number) => Promise<void>> {
  // Found once: to look for it among the roles of thousands of elements would be the most of what is measured.
  const client = await page.getByRole("textbox", { name: "For", exact: true }).elementHandle();
  return async (n) => await client?.fill(`Client ${n}`);
}
