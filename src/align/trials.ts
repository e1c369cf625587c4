import type { RowLayout } from "../shade-plan/index.ts";
import type { LineProblem, LineSolution, LineWindow } from "./line-problem.ts";
import { solveLine } from "./solve.ts";

/** Ways out are tried on the room as it would be; a room that asks for more of them is left with the plain ones. */
const MOST_TRIALS = 6;

/** How one window fares in a line. */
export interface Outcome {
  follows: "levels" | "spacing" | "own";
  layout?: RowLayout;
}

/** How a window would fare in a changed room; undefined where no more is tried. */
export type Trial = (id: string, change: (problem: LineProblem) => LineProblem) => Outcome | undefined;

/** Trials on one room: each changed room is solved once, and at most six of them. */
export function trialsOf(problem: LineProblem): Trial {
  let left = MOST_TRIALS;
  const known = new Map<string, LineSolution>();
  return (id, change) => {
    const changed = change(problem);
    const key = JSON.stringify(changed);
    let solution = known.get(key);
    if (solution === undefined) {
      if (left === 0) return undefined;
      left -= 1;
      solution = solveLine(changed);
      known.set(key, solution);
    }
    const placed = solution.kind === "aligned" ? solution.layouts.get(id) : undefined;
    return placed === undefined ? { follows: "own" } : { follows: placed.follows, layout: placed.layout };
  };
}

/** The same room with one of its windows changed. */
export function withWindow(
  problem: LineProblem,
  id: string,
  change: (window: LineWindow) => LineWindow,
): LineProblem {
  return {
    ...problem,
    windows: problem.windows.map((window) => (window.id === id ? change(window) : window)),
  };
}
