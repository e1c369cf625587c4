import { existsSync, readFileSync } from "node:fs";

/** One measured figure and what it should come to. */
export interface Figure {
  name: string;
  value: number;
  unit: string;
  goal: number;
  better: "lower" | "higher";
  /** What it was compared with on this machine, and how many times better the value is. */
  peer?: string;
  ratio?: number;
}

/** The value below which the given share of samples lies. */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  if (value === undefined) throw new Error("invalid samples: none");
  return value;
}

export function median(samples: readonly number[]): number {
  return quantile(samples, 0.5);
}

/**
 * The quickest of some samples. What else the machine does, a neighbour that takes the processor or halves its clock,
 * only ever adds: the least of many is nearest to what the work itself takes, and steadier than their median.
 */
export function least(samples: readonly number[]): number {
  return quantile(samples, 0);
}

/** Where Linux keeps how long this thread has run, in nanoseconds, before anything else: `proc(5)`, schedstat. */
const RUN_TIME = "/proc/thread-self/schedstat";

/**
 * Milliseconds that this thread stood on a processor for one call, so that the turns of others do not count; on a
 * machine at rest as good as the time by the clock. Where the system does not tell, it is the time by the clock.
 */
export function ran(work: () => unknown): number {
  if (!existsSync(RUN_TIME)) return timed(work);
  const start = runMs();
  work();
  return runMs() - start;
}

/** The same of work that waits in between: milliseconds of processor of the whole process, its collector with it. */
export async function ranWaiting(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function runMs(): number {
  // Asking for the usage brings what the kernel has counted of this thread up to the moment.
  process.cpuUsage();
  return Number(readFileSync(RUN_TIME, "utf8").split(" ")[0]) / 1e6;
}

/** Milliseconds of one call among `calls` in a row, the collector's share with them: the least of so many rounds. */
export function leastOfRounds(
  work: () => unknown,
  { warm, rounds, calls }: { warm: number; rounds: number; calls: number },
): number {
  for (let n = 0; n < warm; n++) work();
  const round = () => {
    for (let n = 0; n < calls; n++) work();
  };
  return least(Array.from({ length: rounds }, () => ran(round) / calls));
}

/** Milliseconds that one call takes. */
export function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds of each of `times` calls, after `warm` that do not count; by the clock unless told. */
export function samplesOf(
  work: () => unknown,
  { warm, times }: { warm: number; times: number },
  measured: (work: () => unknown) => number = timed,
): number[] {
  for (let n = 0; n < warm; n++) work();
  return Array.from({ length: times }, () => measured(work));
}
