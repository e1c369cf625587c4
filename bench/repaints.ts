import type { Page } from "playwright-core";
import { quantile } from "./figure.ts";

/** The planner measures each edit and each move of the shade from its event until the frame that shows it is painted. */
const REPAINT = "shadewright:repaint";
/** Of a hundred repaints so many are as quick as the figure says, or quicker. */
const SHARE = 0.95;

/** Milliseconds of each repaint; each is painted before the next begins. Those of `warm` do not count. */
export async function repaintsOf(
  page: Page,
  act: (n: number) => Promise<void>,
  { warm, times }: { warm: number; times: number },
): Promise<number[]> {
  for (let n = 0; n < warm + times; n++) {
    if (n === warm) await page.evaluate((name) => performance.clearMeasures(name), REPAINT);
    const before = await repaints(page);
    await act(n);
    await page.waitForFunction(([name, count]) => performance.getEntriesByName(name).length > count, [
      REPAINT,
      before,
    ] as const);
  }
  const samples = await page.evaluate(
    (name) => performance.getEntriesByName(name, "measure").map(({ duration }) => duration),
    REPAINT,
  );
  if (samples.length < times) throw new Error(`invalid run: ${samples.length} repaints of ${times}`);
  return samples;
}

export function p95(samples: readonly number[]): number {
  return quantile(samples, SHARE);
}

function repaints(page: Page): Promise<number> {
  return page.evaluate((name) => performance.getEntriesByName(name, "measure").length, REPAINT);
}
