import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { hangFromNothing } from "./hang-strip.ts";
import { type LeaningProblem, type LeaningState, leaningPoints, leanStrip } from "./leaning-strip.ts";
import { placesOf, planeForces, type StripProblem } from "./strip.ts";

/** Walks from a strip that only touches to the one asked for. */
function leant(problem: LeaningProblem, nodes = 64): LeaningState {
  const free = hangFromNothing({ weight: problem.weight, gap: 1.5, planes: [] }, nodes);
  if (free.kind !== "converged") throw new Error("not converged");
  let state: LeaningState = { ...free.value, length: 2 };
  for (let i = 1; i <= 20; i++) {
    const part = i / 20;
    const solved = leanStrip({ ...problem, gap: 1.5 + part * (problem.gap - 1.5) }, state);
    if (solved.kind !== "converged") throw new Error(`not converged at ${part}`);
    state = solved.value;
  }
  return state;
}

const cases: [number, number, number][] = [
  [20, 0.8, 0],
  [82, 0.6, 0.3],
  [82, 0.1, 0.5],
  [300, 0.4, 0.2],
];

describe("a strip that lies partly on the folds below it", () => {
  test.each(cases)("λ %f, gap %f, tilt %f: springs at the nodes come to the same", (weight, gap, tiltRad) => {
    const state = leant({ weight, gap, tiltRad });
    expect(state.length).toBeLessThan(2);
    const problem: StripProblem = {
      weight,
      gap,
      planes: [{ out: 0, down: 0, tiltRad, facing: 1, hanging: true }],
    };
    const other = hangFromNothing(problem, 160);
    if (other.kind !== "converged") throw new Error("not converged");
    const [mine, theirs] = [leaningPoints(state, { gap }), placesOf(other.value.slope)];
    // Springs sink by a thousandth; nodes do not meet the furthest point.
    expectNear(Math.max(...mine.x), Math.max(...theirs.x), 2e-3);
    expectNear(Math.max(...mine.y), Math.max(...theirs.y), 2e-3);
    expectNear(state.up, other.value.up, 0.01 * weight);
    expectNear(state.side, other.value.side, 0.01 * weight);
  });

  test.each(cases)("λ %f, gap %f, tilt %f: moments about the upper hinge balance", (weight, gap, tiltRad) => {
    const problem: StripProblem = {
      weight,
      gap,
      planes: [{ out: 0, down: 0, tiltRad, facing: 1, hanging: true }],
    };
    const solved = hangFromNothing(problem, 320);
    if (solved.kind !== "converged") throw new Error("not converged");
    const { slope, side, up } = solved.value;
    const { x } = placesOf(slope);
    const weightMoment = (weight * 2 * (x.reduce((sum, one) => sum + one, 0) - (x.at(-1) ?? 0) / 2)) / 320;
    const pushed = planeForces(problem, solved.value, 1);
    // The lower hinge pushes forward with what is left of H, a gap below the upper one.
    expectNear(weightMoment, pushed.moment + (side - pushed.out) * gap, 2e-3 * weight);
    expect(up + pushed.up).toBeLessThan(2 * weight);
    expect(pushed.up).toBeGreaterThanOrEqual(0);
  });

  test("one that does not reach the plane hangs free", () => {
    const free = hangFromNothing({ weight: 30, gap: 1.6, planes: [] }, 64);
    if (free.kind !== "converged") throw new Error("not converged");
    const solved = leanStrip({ weight: 30, gap: 1.6, tiltRad: 0 }, { ...free.value, length: 2 });
    expect(solved.kind === "converged" && solved.value.length).toBe(2);
  });

  test("what cannot be solved says so", () => {
    const state = leant({ weight: 20, gap: 0.8, tiltRad: 0 }, 8);
    expect(leanStrip({ weight: 1e9, gap: 0.1, tiltRad: 1 }, state).kind).toBe("notConverged");
  });
});
