import type { Page } from "playwright-core";
import { quantile } from "./figure.ts";
import { type OnProcessor, traced } from "./trace.ts";

/** The planner measures each edit and each move of the shade from its event until the frame that shows it is painted. */
const REPAINT = "shadewright:repaint";
/** Of a hundred repaints so many are as quick as the figure says, or quicker. */
const SHARE = 0.95;

interface Rounds {
  warm: number;
  times: number;
}

/** One repaint on the clock of its page, in milliseconds. */
interface Repaint {
  /** Its event. */
  startMs: number;
  /** Its frame is painted. */
  endMs: number;
  /** Between the two the page stood idle for so long, until the display asked for its next picture. */
  waitedMs: number;
}

/** Milliseconds of each repaint by the clock; each is painted before the next begins. Those of `warm` do not count. */
export async function repaintsOf(
  page: Page,
  act: (n: number) => Promise<void>,
  rounds: Rounds,
): Promise<number[]> {
  const repaints = await runRepaints(page, act, rounds);
  return repaints.map(({ startMs, endMs, waitedMs }) => endMs - startMs - waitedMs);
}

/**
 * Milliseconds that the page's own thread stood on a processor for each repaint, by the browser's trace: by the clock a
 * repaint takes longer the more there is to do beside it. On a machine at rest the two agree.
 */
export async function repaintsOnProcessor(
  page: Page,
  act: (n: number) => Promise<void>,
  rounds: Rounds,
): Promise<number[]> {
  let repaints: Repaint[] = [];
  const work: OnProcessor = await traced(page, async () => {
    repaints = await runRepaints(page, act, rounds);
  });
  return repaints.map(({ startMs, endMs }) => work(startMs, endMs));
}

async function runRepaints(
  page: Page,
  act: (n: number) => Promise<void>,
  { warm, times }: Rounds,
): Promise<Repaint[]> {
  const repaints: Repaint[] = [];
  for (let n = 0; n < warm + times; n++) {
    // It is listened for, not asked for again and again: asking takes time of the same thread.
    const painted = await page.evaluateHandle((name) => {
      const next = new Promise<Repaint>((resolve) => {
        const observer = new PerformanceObserver((list) => {
          const one = list.getEntriesByName(name, "measure")[0] as PerformanceMeasure | undefined;
          if (one === undefined) return;
          observer.disconnect();
          const { waitedMs } = one.detail as { waitedMs: number };
          resolve({ startMs: one.startTime - waitedMs, endMs: one.startTime + one.duration, waitedMs });
        });
        observer.observe({ entryTypes: ["measure"] });
      });
      return { next };
    }, REPAINT);
    await act(n);
    const one = await painted.evaluate(({ next }) => next);
    if (n >= warm) repaints.push(one);
    await painted.dispose();
  }
  return repaints;
}

export function p95(samples: readonly number[]): number {
  return quantile(samples, SHARE);
}
