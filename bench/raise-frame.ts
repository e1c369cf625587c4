import { newJob, newWindow, STYLES } from "../src/job/index.ts";
import type { Harness } from "../test/e2e/browser.ts";
import type { Figure } from "./figure.ts";
import { pageWithJob } from "./open-job.ts";
import { p95, repaintsOnProcessor } from "./repaints.ts";

/** The front of a shade raised step by step, of the slowest style, in time that the page’s thread worked. */
export async function raiseFrame(harness: Harness): Promise<Figure> {
  const windows = STYLES.map((style) => {
    const window = newWindow({ id: style, name: style, widthMm: 1200, heightMm: 1600 });
    return { ...window, shade: { ...window.shade, style } };
  });
  const empty = newJob({ id: "raise", name: "Raise, demo", system: "imperial" });
  const page = await pageWithJob(harness, { ...empty, rooms: [{ id: "room", name: "Room", windows }] });
  const slowest: number[] = [];
  for (const style of STYLES) {
    await page.goto(`${harness.url}#/job/raise/${style}`);
    await page.locator(".sheet-svg").waitFor();
    const slider = page.getByRole("slider", { name: "Raise" });
    await slider.focus();
    // The height stays from one shade to the next.
    await page.keyboard.press("Home");
    const step = (n: number) => page.keyboard.press(n < 50 ? "ArrowUp" : "ArrowDown");
    slowest.push(p95(await repaintsOnProcessor(page, step, { warm: 10, times: 60 })));
  }
  await page.context().close();
  return { name: "raise.frame", value: Math.max(...slowest), unit: "ms", goal: 16, better: "lower" };
}
