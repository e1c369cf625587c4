import type { RowLayout } from "../shade-plan/index.ts";
import type { LineProblem, LineSolution, LineWindow, SolvedLine } from "./line-problem.ts";

/** Sums of lengths may differ by this, mm. */
const SAME_MM = 1e-4;

/**
 * What is wrong with a line, in words; nothing where nothing is. Written from what a maker would measure on the
 * wall: heights of rows above the floor, one by one, with no knowledge of how they were found.
 */
export function verifyLine(problem: LineProblem, solution: LineSolution): string[] {
  if (solution.kind === "nothing-shared") return [];
  const faults: string[] = [];
  if (!isOnMark(solution.spacingMm, problem.markMm))
    faults.push(`spacing ${solution.spacingMm} is between two marks`);
  if (!isOnMark(solution.levelMm, problem.markMm))
    faults.push(`level ${solution.levelMm} is between two marks`);
  if (solution.layouts.size < 2) faults.push("fewer than two windows follow");
  for (const id of solution.layouts.keys()) {
    if (!problem.windows.some((window) => window.id === id)) faults.push(`${id} is no window of the room`);
  }
  for (const window of problem.windows) {
    faults.push(...windowFaults(problem, solution, window).map((fault) => `${window.id}: ${fault}`));
  }
  return [...faults, ...hemFaults(problem, solution)];
}

function windowFaults(problem: LineProblem, solution: SolvedLine, window: LineWindow): string[] {
  const aligned = solution.layouts.get(window.id);
  if (aligned === undefined) return [];
  const { layout, follows } = aligned;
  const faults: string[] = [];
  const hold = (holds: boolean, fault: string) => {
    if (!holds) faults.push(fault);
  };
  hold(Object.values(layout).every(Number.isFinite), "a length is no number");
  hold(Math.abs(layout.spacingMm - solution.spacingMm) < SAME_MM, "its spacing is another");
  if (follows === "levels") {
    const hemMm = (window.topMm ?? Number.NaN) - window.ask.lengthMm;
    for (let row = 0; row < layout.rows; row++) {
      const heightMm = hemMm + layout.bottomMm + row * layout.spacingMm;
      const steps = (heightMm - solution.levelMm) / solution.spacingMm;
      hold(
        Math.abs(steps - Math.round(steps)) * solution.spacingMm < SAME_MM,
        `row ${row + 1} is on no level`,
      );
      hold(isOnMark(heightMm, problem.markMm), `row ${row + 1} is between two marks`);
    }
  }
  return [...faults, ...askFaults(problem, window, layout)];
}

/** What the shade itself asks for. */
function askFaults(problem: LineProblem, { ask }: LineWindow, layout: RowLayout): string[] {
  const faults: string[] = [];
  const hold = (holds: boolean, fault: string) => {
    if (!holds) faults.push(fault);
  };
  const { bottom } = ask;
  const { bottomMm, headrailMm, raisedMm, spacingMm, rows } = layout;
  const gatheredMm = rows * spacingMm;
  hold(
    Math.abs(bottomMm + gatheredMm + headrailMm - ask.lengthMm) < SAME_MM,
    "its parts do not add up to its length",
  );
  hold(rows >= 1 && Number.isInteger(rows), "its rows cannot be counted");
  hold(headrailMm > ask.leastHeadrailMm - SAME_MM, "its headrail allowance is too short");
  hold(spacingMm < ask.largestMm + SAME_MM, "its spacing is too large");
  hold(spacingMm > ask.smallestMm - SAME_MM, "its spacing is too small");
  hold(ask.rows === undefined || rows === ask.rows, "its number of rows was fixed");
  hold(
    ask.spacingMm === undefined || Math.abs(spacingMm - ask.spacingMm) <= problem.markMm,
    "its spacing was fixed",
  );
  hold(gatheredMm > ask.leastGatheredMm - SAME_MM, "too little of it gathers");
  const wantedMm = bottom.kind === "half-fold" ? bottom.skirtMm + spacingMm / 2 : bottom.hemBarMm;
  hold(bottomMm > wantedMm - SAME_MM, "its hem section is too short");
  hold(!ask.bottomFixed || bottomMm < wantedMm + problem.markMm, "its hem section was fixed");
  hold(
    !ask.headrailFixed || headrailMm < ask.leastHeadrailMm + problem.markMm,
    "its rule leaves no headrail",
  );
  const below = (mm: number) =>
    bottom.kind === "half-fold" ? mm : bottom.ringStackMm + Math.max(mm, spacingMm / 2);
  hold(Math.abs(raisedMm - headrailMm - below(bottomMm)) < SAME_MM, "its raised height is another");
  hold(ask.stackMm === undefined || raisedMm < ask.stackMm + SAME_MM, "raised it is higher than allowed");
  const gaveMm = headrailMm - ask.leastHeadrailMm + bottomMm - wantedMm;
  hold(gaveMm < problem.mostLowerMm + SAME_MM, "it hangs lower than allowed");
  return faults;
}

/** Raised hems that are said to meet do so to one mark. */
function hemFaults({ windows, markMm }: LineProblem, { layouts, raisedHemMm }: SolvedLine): string[] {
  const heights = windows.flatMap(({ id, topMm = Number.NaN }) => {
    const aligned = layouts.get(id);
    return aligned?.sharesRaisedHem === true ? [topMm - aligned.layout.raisedMm] : [];
  });
  if (raisedHemMm === undefined) return heights.length === 0 ? [] : ["raised hems meet at no level"];
  if (heights.length < 2) return ["a raised hem meets no other"];
  const off = heights.some((mm) => !(Math.abs(mm - raisedHemMm) < markMm / 2 + SAME_MM));
  return off ? ["raised hems are further apart than one mark"] : [];
}

function isOnMark(lengthMm: number, markMm: number): boolean {
  const marks = lengthMm / markMm;
  return Math.abs(marks - Math.round(marks)) * markMm < SAME_MM;
}
