/** What an iteration came to. The best state found is handed back either way, with how far it is from an answer. */
export type Solved<T> =
  | { kind: "converged"; value: T; iterations: number; residual: number }
  | { kind: "notConverged"; best: T; iterations: number; residual: number };

/** The state of either kind; look at `kind` before trusting it. */
export function bestOf<T>(solved: Solved<T>): T {
  return solved.kind === "converged" ? solved.value : solved.best;
}
