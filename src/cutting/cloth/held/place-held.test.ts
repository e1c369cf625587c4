import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "../grid.ts";
import type { Bolt, ClothProblem, HeldPiece, Turn } from "../problem.ts";
import { byBolt, placeHeld } from "./place-held.ts";

const ANY_WAY = { grain: "free", nap: "either" } as const;
const at = (pieceId: string, xMm: number, yMm: number, turn: Turn = 0, boltId = "b0"): HeldPiece => ({
  ...{ pieceId, boltId, xMm, yMm, turn },
});
function placed(
  pieces: readonly Sized[],
  held: readonly HeldPiece[] | undefined,
  { bolts = [{}], ...more }: { bolts?: readonly Partial<Bolt>[] } & Partial<Omit<ClothProblem, "bolts">> = {},
) {
  const problem: ClothProblem = { ...givenCloth(pieces, bolts, more), ...(held ? { held } : {}) };
  return placeHeld(problem, stepGridOf(problem));
}

// What is expected follows by hand from the words of `problem.ts`, on cloth of 100 mm.
describe("a held piece", () => {
  test.each<[Turn, number, number]>([
    [0, 40, 25],
    [90, 25, 40],
    [180, 40, 25],
    [270, 25, 40],
  ])("turned by %d lies in its own size, without the gap, in whole steps", (turn, widthMm, lengthMm) => {
    const { laid, notHeld } = placed([{ size: [40, 25], ...ANY_WAY }], [at("p0", 10.04, 20.06, turn)], {
      gapMm: 3,
    });
    expect(notHeld).toEqual([]);
    expect(laid).toEqual([
      { boltId: "b0", placement: { pieceId: "p0", xMm: 10, yMm: 20.1, widthMm, lengthMm, turn } },
    ]);
  });

  test("is judged as if the others that nobody has laid were not to be cut", () => {
    const pieces = [{ size: [60, 20] }, { size: [70, 900] }, { size: [400, 10] }] as const;
    expect(placed(pieces, [at("p0", 40, 5)])).toMatchObject({ laid: [{ boltId: "b0" }], notHeld: [] });
    expect(placed(pieces, undefined)).toEqual({ laid: [], notHeld: [] });
  });

  test("that is not there any more, or its bolt, is let go; and one laid twice stays where it was first", () => {
    const nowhere = "there is no such piece, or no such bolt any more";
    const held = [at("gone", 0, 0), at("p0", 0, 0, 0, "gone"), at("p0", 0, 30), at("p0", 0, 0)];
    const { laid, notHeld } = placed([{ size: [60, 20] }], held);
    expect(notHeld).toEqual([
      { pieceId: "gone", reason: nowhere },
      { pieceId: "p0", reason: nowhere },
      { pieceId: "p0", reason: "it is laid twice" },
    ]);
    expect(laid.map(({ placement }) => placement.yMm)).toEqual([30]);
  });

  test("gives way to those before it that lie where it does, not to those let go", () => {
    const pieces = [{ size: [60, 20] }, { size: [60, 20] }, { size: [60, 20] }] as const;
    const reasons = (held: readonly HeldPiece[], gapMm = 0) =>
      placed(pieces, held, { gapMm }).notHeld.map(({ pieceId, reason }) => `${pieceId}: ${reason}`);
    expect(reasons([at("p0", 0, 0), at("p1", 30, 10), at("p2", 0, 20)])).toEqual([
      "p1: p0 and p1 lie too close on bolt b0",
    ]);
    // The first hangs over the selvedge and is let go: the second has its place.
    expect(reasons([at("p0", 50, 0), at("p1", 30, 10)])).toEqual(["p0: p0 lies outside bolt b0"]);
    expect(reasons([at("p0", 0, 0), at("p1", 0, 20)], 2)).toEqual(["p1: p0 and p1 lie too close on bolt b0"]);
    expect(reasons([at("p0", 0, 0), at("p1", 0, 22)], 2)).toEqual([]);
  });

  test("on another bolt is in nobody's way, but for the dye lot of its group", () => {
    const bolts = [{}, {}];
    const held = [at("p0", 0, 0), at("p1", 30, 10, 0, "b1"), at("p2", 0, 40)];
    const pieces = (more: Partial<Sized>) => [0, 1, 2].map(() => ({ size: [60, 20] as const, ...more }));
    const { laid, notHeld } = placed(pieces({}), held, { bolts });
    expect(notHeld).toEqual([]);
    // Those of one bolt come together, each bolt where its first piece came.
    expect(byBolt(laid).map(({ boltId, placements }) => [boltId, placements.map((p) => p.pieceId)])).toEqual([
      ["b0", ["p0", "p2"]],
      ["b1", ["p1"]],
    ]);
    const inOneLot = placed(pieces({ lotGroup: "g" }), held, { bolts });
    expect(inOneLot.notHeld).toEqual([{ pieceId: "p1", reason: "g comes from 2 dye lots" }]);
    expect(inOneLot.laid.map(({ placement }) => placement.pieceId)).toEqual(["p0", "p2"]);
  });
});
