import { describe, expect, test } from "vitest";
import { handShade } from "../../test/hand-shade.ts";
import { expectNear } from "../../test/near.ts";
import { inches } from "../units/index.ts";
import { cordLengths } from "./cord-lengths.ts";
import { chooseLock } from "./lock/choose-lock.ts";
import { planTail } from "./lock/plan-tail.ts";

/**
 * Run X1 of the trade notes, derived there by geometry (not published): 36 × 60 in, first row 3.8 in,
 * columns 2, 10, 18, 26, 34 in, lock at the right edge, tail 30 in, knots 6 in.
 */
const X1 = {
  source: "derived run X1, a geometry check: 94.2, 102.2, 110.2, 118.2, 126.2, in all 551.0 in",
  lengthsIn: [126.2, 118.2, 110.2, 102.2, 94.2],
  totalIn: 551.0,
  yards: 15.31,
  travelIn: 53.2,
  raisedTailIn: 83.2,
  tolIn: 1e-9,
};

describe(X1.source, () => {
  const lengths = cordLengths({
    columnsMm: [2, 10, 18, 26, 34].map(inches),
    lockMm: inches(36),
    riseMm: inches(60 - 3.8),
    tailMm: inches(30),
    knotsMm: inches(6),
  });

  test("cords", () => {
    expect(lengths).toHaveLength(5);
    lengths.forEach((length, i) => {
      expectNear(length / 25.4, X1.lengthsIn[i] ?? 0, X1.tolIn);
    });
    const total = lengths.reduce((sum, one) => sum + one, 0);
    expectNear(total / 25.4, X1.totalIn, X1.tolIn);
    expectNear(total / 914.4, X1.yards, 0.005);
  });

  test("travel and raised tail", () => {
    const {
      resolved: shade,
      size,
      grid,
    } = handShade({
      window: { shade: { making: { lift: { tailMm: inches(30) } } } },
    });
    const { lock } = chooseLock(shade, grid.columns.length);
    const { values: tail } = planTail({ shade, size, grid, liftParts: { lock } }, 0);
    expectNear(grid.travelMm / 25.4, X1.travelIn, X1.tolIn);
    expectNear(tail.raisedMm / 25.4, X1.raisedTailIn, X1.tolIn);
  });
});
