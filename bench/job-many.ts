import type { Page } from "playwright-core";
import type { Harness } from "../test/e2e/browser.ts";
import type { Figure } from "./figure.ts";
import { jobOf } from "./many-windows.ts";
import { pageWithJob } from "./open-job.ts";
import { p95, repaintsOf } from "./repaints.ts";

/** A job of so many windows: from its link on the shelf until its windows stand there, and an edit on its page. */
export async function jobOfMany(harness: Harness, windows: number): Promise<Figure[]> {
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
  // Found once: to look for it among the roles of thousands of elements would be the most of what is measured.
  const client = await page.getByRole("textbox", { name: "For", exact: true }).elementHandle();
  const edit = async (n: number) => client?.fill(`Client ${n}`);
  const samples = await repaintsOf(page, edit, { warm: 10, times: 50 });
  const work = await threadTime(page);
  const before = await work();
  await repaintsOf(page, (n) => edit(n + 100), { warm: 0, times: 30 });
  const workMs = (1000 * ((await work()) - before)) / 30;
  await page.context().close();
  return [
    { name: `job.open.${windows}`, value: openMs / 1000, unit: "s", goal: 1.5, better: "lower" },
    { name: `job.edit.${windows}`, value: p95(samples), unit: "ms", goal: 16, better: "lower" },
    { name: `job.edit.work.${windows}`, value: workMs, unit: "ms", goal: 16, better: "lower" },
  ];
}

/** What the page's thread has worked so far, s: unlike a clock it does not count what others do on the machine. */
async function threadTime(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  return async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN;
  };
}
