import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { findRoot } from "../solve/find-root.ts";
import { type FoldShape, type HangingFold, hangFold } from "./hanging-fold.ts";

const unit = (weight: number, gapMm: number, more: Partial<HangingFold> = {}): HangingFold => ({
  arcMm: 2,
  gapMm,
  weightNPerMm2: weight,
  rigidityNmm: 1,
  ...more,
});

function hung(fold: HangingFold, nodes = 160): FoldShape {
  const solved = hangFold(fold, nodes);
  if (solved.kind !== "converged") throw new Error(`not converged, residual ${solved.residual}`);
  return solved.value;
}

describe("ends that are held at a slope", () => {
  test("a hinge passes no moment on; held where it hangs anyway, nothing changes", () => {
    const free = hung(unit(30, 0.8));
    expectNear(free.momentAtTopN, 0, 1e-9);
    expectNear(free.momentAtBottomN, 0, 1e-9);
    const held = hung(unit(30, 0.8, { topSlopeRad: free.slopeRad[0] ?? 0 }));
    expectNear(held.momentAtTopN, 0, 1e-6);
    expectNear(held.depthMm, free.depthMm, 1e-6);
  });

  test("both ends held upright and nothing weighs: Euler’s fourth case, 4 π² B/l² (Timoshenko & Gere §2.3; from memory)", () => {
    // Four times the load of two hinges, as the gap comes near the length.
    const load = (gap: number) => -hung(unit(0, gap, { topSlopeRad: 0, bottomSlopeRad: 0 })).upAtTopNPerMm;
    const [near, nearer] = [load(1.96), load(1.98)];
    expectNear(nearer + (nearer - near), (4 * Math.PI ** 2) / 4, 0.02);
  });

  test("energy against moment: turning the top by dθ costs M dθ", () => {
    const at = (topSlopeRad: number) => hung(unit(20, 0.7, { topSlopeRad }), 320);
    const energyOf = ({ slopeRad, yMm }: FoldShape) => {
      const step = 2 / (slopeRad.length - 1);
      let energy = 0;
      for (let i = 0; i + 1 < slopeRad.length; i++) {
        const [a = 0, b = 0] = [slopeRad[i], slopeRad[i + 1]];
        energy += (b - a) ** 2 / (2 * step) - (20 * step * ((yMm[i] ?? 0) + (yMm[i + 1] ?? 0))) / 2;
      }
      return energy;
    };
    const moment = at(0.1).momentAtTopN;
    expectNear((energyOf(at(0.12)) - energyOf(at(0.08))) / 0.04, -moment, 0.02 * Math.abs(moment));
  });

  test.each([8, 30, 100, 300])(
    "λ %f: to hold the top of a gathered fold upright takes about θ √(B (9B/a² + wa)), as `breakWay` has it",
    (weight) => {
      const planes = { backMm: 0 };
      const free = hung(unit(weight, 0.05, planes));
      const lean = free.slopeRad[0] ?? 0;
      const held = hung(unit(weight, 0.05, { ...planes, topSlopeRad: 0 }));
      const formula = lean * Math.sqrt(9 + weight);
      expect(held.momentAtTopN).toBeGreaterThan(0.5 * formula);
      expect(held.momentAtTopN).toBeLessThan(1.5 * formula);
    },
  );

  test("two folds that run on through their row share one slope, and the lower one turns the upper backward", () => {
    // Above, a fold just begun; below, one gathered. At the shared row slopes match and moments cancel.
    const above = (slope: number) => hung(unit(60, 1.7, { bottomSlopeRad: slope }), 80).momentAtBottomN;
    const below = (slope: number) => hung(unit(60, 0.1, { backMm: 0, topSlopeRad: slope }), 80).momentAtTopN;
    const hinge = hung(unit(60, 1.7)).slopeRad.at(-1) ?? 0;
    const root = findRoot((slope) => below(slope) - above(slope), -0.8, 0.2, 1e-6);
    if (root.kind !== "converged") throw new Error(root.kind);
    // By itself the upper fold comes back to the row (a slope below 0); running on it is turned towards the other way.
    expect(hinge).toBeLessThan(0);
    expect(root.value).toBeGreaterThan(hinge);
    expectNear(below(root.value), above(root.value), 1e-3);
  });
});
