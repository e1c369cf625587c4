import { describe, expect, test } from "vitest";
import { givenCloth } from "../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "./grid.ts";
import type { Bolt, ClothProblem, Placement } from "./index.ts";
import { cutUpByHand } from "./lay-out.ts";

/** Pieces where they lie on cloth of 100 mm: size, and upper left corner. */
type Laid = readonly [w: number, h: number, x: number, y: number];
function cutUp(laid: readonly Laid[], bolt: Partial<Bolt> = {}, more: Partial<ClothProblem> = {}) {
  const problem = givenCloth(
    laid.map(([w, h]) => ({ size: [w, h] })),
    [bolt],
    more,
  );
  const placements = laid.map(([widthMm, lengthMm, xMm, yMm], n): Placement => {
    return { pieceId: `p${n}`, xMm, yMm, widthMm, lengthMm, turn: 0 };
  });
  const grid = stepGridOf(problem);
  expect(cutUpByHand(problem, grid, "gone", placements)).toBeUndefined();
  const plan = cutUpByHand(problem, grid, "b0", placements);
  if (plan === undefined) throw new Error("no plan");
  const sheets = plan.leaves.map(({ holds, xMm, yMm, widthMm, lengthMm }) => {
    const name = holds.kind === "piece" ? holds.pieceId : holds.kind;
    return `${name} ${widthMm} × ${lengthMm} at ${xMm}, ${yMm}`;
  });
  const cuts = plan.cuts.map(({ direction, atMm, boltLeftMm }) => [direction, atMm, boltLeftMm]);
  return { ...plan, sheets: sheets.sort(), words: cuts };
}

// By hand, from the words of `problem.ts`.
describe("a bolt with pieces where they lie", () => {
  test("tells after each cut across what hangs on it how much is left", () => {
    const two = [
      [60, 50, 0, 0],
      [40, 30, 60, 0],
    ] as const;
    expect(cutUp(two, { lengthMm: 90 }).words).toEqual([
      ["across", 50, 40],
      ["along", 60, undefined],
      ["across", 30, undefined],
    ]);
    expect(cutUp(two).words).toEqual([
      ["across", 50, undefined],
      ["along", 60, undefined],
      ["across", 30, undefined],
    ]);
  });

  test("falls into pieces, waste, what is kept, and the rest of the bolt", () => {
    const one = [[60, 50, 0, 0]] as const;
    const sheets = (keep: ClothProblem["keep"], bolt: Partial<Bolt> = {}) =>
      cutUp(one, { lengthMm: 90, ...bolt }, { keep }).sheets;
    const parted = (beside: string) => [
      "p0 60 × 50 at 0, 0",
      `${beside} 40 × 50 at 60, 0`,
      "rest 100 × 40 at 0, 50",
    ];
    expect(sheets({ widthMm: 40, lengthMm: 50 })).toEqual(parted("remnant").sort());
    expect(sheets({ widthMm: 50, lengthMm: 40 })).toEqual(parted("remnant").sort());
    expect(sheets({ widthMm: 41, lengthMm: 50 })).toEqual(parted("waste").sort());
    expect(sheets({ widthMm: 40, lengthMm: 51 })).toEqual(parted("waste").sort());
    const flaws = (xMm: number, yMm: number) => [{ xMm, yMm, widthMm: 10, lengthMm: 10 }];
    const keep = { widthMm: 40, lengthMm: 50 };
    // A flaw just touches it on each side, or lies within it by a millimetre.
    for (const [x, y, kind] of [
      [50, 20, "remnant"],
      [51, 20, "waste"],
      [70, 50, "remnant"],
      [70, 49, "waste"],
      [99, 49, "waste"],
    ] as const)
      expect(sheets(keep, { flaws: flaws(x, y) })).toEqual(parted(kind).sort());
    // On an endless bolt nobody says how much the rest is.
    expect(cutUp(one).sheets).toEqual(["p0 60 × 50 at 0, 0", "remnant 40 × 50 at 60, 0"]);
  });

  test("names what is kept after the bolt, counted on, and lists it with its size", () => {
    const both = [
      [60, 50, 0, 0],
      [70, 30, 0, 50],
    ] as const;
    const { remnants, usedMm, boltId } = cutUp(both, { name: "Linen" });
    expect([boltId, usedMm]).toEqual(["b0", 80]);
    expect(remnants).toEqual([
      { name: "Linen, remnant 1", boltId: "b0", xMm: 60, yMm: 0, widthMm: 40, lengthMm: 50 },
      { name: "Linen, remnant 2", boltId: "b0", xMm: 70, yMm: 50, widthMm: 30, lengthMm: 30 },
    ]);
    expect(cutUp(both).remnants.map(({ name }) => name)).toEqual(["b0, remnant 1", "b0, remnant 2"]);
  });

  test("has no cuts where four hold each other round a hole; they are told from the first end on", () => {
    const wheel = [
      [10, 20, 20, 0],
      [20, 10, 10, 20],
      [20, 10, 0, 0],
      [10, 20, 0, 10],
    ] as const;
    const { cuts, leaves, remnants, usedMm, placements } = cutUp(wheel, {}, { cutting: { kind: "free" } });
    expect([cuts, leaves, remnants, usedMm]).toEqual([[], [], [], 30]);
    expect(placements.map(({ pieceId }) => pieceId)).toEqual(["p2", "p0", "p3", "p1"]);
  });

  test("is cut from the right where the cutter is left-handed", () => {
    const three = [
      [30, 50, 0, 0],
      [30, 50, 30, 0],
      [30, 50, 60, 0],
    ] as const;
    const along = (leftHanded: boolean) =>
      cutUp(three, {}, { table: { leftHanded } }).words.flatMap(([way, at]) => (way === "along" ? [at] : []));
    expect(along(false)).toEqual([30, 60, 90]);
    expect(along(true)).toEqual([90, 60, 30]);
  });
});
