import { bestOf, type Solved } from "../solve/outcome.ts";
import { SHORTEST_STEP } from "../tolerances.ts";

/**
 * Follows a solution while a problem changes from 0 to 1: each answer is the next one's start, a failed step is tried
 * at half its length, a good one lengthens the next. What it ends with belongs to 1, or is the furthest it came, not
 * converged.
 */
export function follow<T>(start: T, solveAt: (part: number, from: T) => Solved<T>, first = 1): Solved<T> {
  let [part, step] = [0, first];
  let [best, iterations] = [start, 0];
  for (;;) {
    const next = Math.min(1, part + step);
    const solved = solveAt(next, best);
    iterations += solved.iterations;
    if (solved.kind === "converged") {
      if (next === 1) return { ...solved, iterations };
      [part, best, step] = [next, bestOf(solved), step * 2];
    } else {
      step /= 2;
      if (step < SHORTEST_STEP) return { kind: "notConverged", best, iterations, residual: solved.residual };
    }
  }
}
