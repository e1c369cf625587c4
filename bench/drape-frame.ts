import type { Page } from "playwright-core";
import { SOFTWARE_GL, startBrowser } from "../test/e2e/browser.ts";
import { type Figure, quantile } from "./figure.ts";
import { untilUsable } from "./usable.ts";

const REPAINT = "shadewright:repaint";
const STEPS = 60;
const WARM = 12;

/**
 * The live picture raised step by step: from the key to the frame that was handed to the painter. WebGL is drawn by the
 * processor alone here, in a process of its own, whose time is not in this figure.
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
    await raise(page, WARM);
    await page.evaluate((name) => performance.clearMeasures(name), REPAINT);
    await raise(page, STEPS);
    const samples = await page.evaluate(
      (name) => performance.getEntriesByName(name, "measure").map(({ duration }) => duration),
      REPAINT,
    );
    if (samples.length < STEPS) throw new Error(`invalid run: ${samples.length} repaints of ${STEPS} steps`);
    return { name: "drape.frame", value: quantile(samples, 0.95), unit: "ms", goal: 8, better: "lower" };
  } finally {
    await harness.close();
  }
}

/** Each step is painted before the next. */
async function raise(page: Page, steps: number): Promise<void> {
  for (let n = 0; n < steps; n++) {
    const before = await repaints(page);
    await page.keyboard.press("ArrowUp");
    await page.waitForFunction(([name, count]) => performance.getEntriesByName(name).length > count, [
      REPAINT,
      before,
    ] as const);
  }
}

function repaints(page: Page): Promise<number> {
  return page.evaluate((name) => performance.getEntriesByName(name, "measure").length, REPAINT);
}
