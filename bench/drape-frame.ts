import { SOFTWARE_GL, startBrowser } from "../test/e2e/browser.ts";
import type { Figure } from "./figure.ts";
import { p95, repaintsOnProcessor } from "./repaints.ts";
import { untilUsable } from "./usable.ts";

/**
 * The live picture raised step by step: milliseconds of the page's own thread from the key to the frame that was handed to
 * the painter. WebGL is drawn by the processor alone here, in a process of its own, whose time is not in this figure; while
 * it moves it is drawn with half the points each way.
 */
export async function drapeFrame(): Promise<Figure> {
  const harness = await startBrowser(SOFTWARE_GL);
  try {
    const { page } = await harness.open({ viewport: { width: 1440, height: 900 } });
    await page.goto(harness.url);
    await untilUsable(page);
    await page.locator(".shelf-job-link").first().click();
    await page.locator(".elevation-window").first().click();
    await page.getByRole("tab", { name: "Picture" }).click();
    await page.getByRole("button", { name: "turn it" }).click();
    await page.locator('.live-room[data-state="done"]').waitFor({ timeout: 120_000 });
    await page.getByRole("slider", { name: "Raise" }).focus();
    const step = () => page.keyboard.press("ArrowUp");
    const samples = await repaintsOnProcessor(page, step, { warm: 12, times: 60 });
    return { name: "drape.frame", value: p95(samples), unit: "ms", goal: 8, better: "lower" };
  } finally {
    await harness.close();
  }
}
