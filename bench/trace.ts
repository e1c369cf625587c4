import type { Page } from "playwright-core";

/** Milliseconds that the page's own thread stood on a processor between two times of its clock. */
export type OnProcessor = (fromMs: number, untilMs: number) => number;

/** One event of Chromium's trace, times in microseconds: “Trace Event Format”, the Chromium project. */
interface TraceEvent {
  name: string;
  cat: string;
  ph: string;
  pid: number;
  tid: number;
  ts: number;
  dur?: number;
  /** For so long its thread ran. */
  tdur?: number;
}

/** Sets the clock of the trace beside that of the page. */
const MARK = "shadewright:trace";
const TASK = "ThreadControllerImpl::RunTask";

/** Traces a page while something is done, and tells how long its thread worked between any two moments of that. */
export async function traced(page: Page, work: () => Promise<void>): Promise<OnProcessor> {
  const browser = page.context().browser();
  if (browser === null) throw new Error("invalid page: it has no browser");
  await browser.startTracing(page, { categories: ["toplevel", "blink.user_timing"] });
  const markMs = await page.evaluate((name) => performance.mark(name).startTime, MARK);
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: TraceEvent[];
  };
  const mark = traceEvents.find(({ name }) => name === MARK);
  if (mark === undefined) throw new Error("invalid trace: the mark is not in it");
  const tasks = traceEvents.filter(
    ({ name, ph, pid, tid, tdur }) =>
      name === TASK && ph === "X" && pid === mark.pid && tid === mark.tid && tdur !== undefined,
  );
  if (tasks.length === 0) throw new Error("invalid trace: it has no task of the page");
  const clock = (ms: number) => mark.ts + (ms - markMs) * 1000;
  return (fromMs, untilMs) => {
    const [from, until] = [clock(fromMs), clock(untilMs)];
    return (
      tasks.reduce((sum, { ts, dur = 0, tdur = 0 }) => {
        const within = Math.min(until, ts + dur) - Math.max(from, ts);
        return within <= 0 || dur === 0 ? sum : sum + (tdur * within) / dur;
      }, 0) / 1000
    );
  };
}
