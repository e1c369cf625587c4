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

/** Milliseconds that one call takes. */
export function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds of each of `times` calls, after `warm` that do not count. */
export function samplesOf(work: () => unknown, { warm, times }: { warm: number; times: number }): number[] {
  for (let n = 0; n < warm; n++) work();
  return Array.from({ length: times }, () => timed(work));
}
