import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "./grid.ts";
import { pieceTypes } from "./piece-types.ts";

describe("pieces of one size", () => {
  const typesOf = (pieces: readonly Sized[], width = 1000) =>
    pieceTypes(stepGridOf(givenCloth(pieces.map((piece) => ({ nap: "either", ...piece })))).items, width);

  // In steps of a tenth of a millimetre.
  test("are one row of the demand, the longest first, and of those as long the widest", () => {
    const sizes = [
      [30, 20],
      [40, 50],
      [30, 20],
      [60, 50],
      [40, 50],
      [30, 20],
    ] as const;
    expect(typesOf(sizes.map((size) => ({ size })))).toEqual({
      types: [
        { w: 600, h: 500, turned: false, row: 0 },
        { w: 400, h: 500, turned: false, row: 1 },
        { w: 300, h: 200, turned: false, row: 2 },
      ],
      demand: [1, 2, 3],
    });
  });

  test("that may be turned lie either way, where the cloth is wide enough for it", () => {
    const free: Sized = { size: [30, 50], grain: "free" };
    const both = [
      { w: 300, h: 500, turned: false, row: 0 },
      { w: 500, h: 300, turned: true, row: 0 },
    ];
    expect(typesOf([free, free])).toEqual({ types: both, demand: [2] });
    expect(typesOf([free], 500).types).toEqual(both);
    expect(typesOf([free], 499).types).toEqual(both.slice(0, 1));
    expect(typesOf([free], 300).types).toEqual(both.slice(0, 1));
    expect(typesOf([{ size: [50, 30], grain: "free" }], 499).types).toEqual([
      { w: 300, h: 500, turned: true, row: 0 },
    ]);
    expect(typesOf([free], 299).types).toEqual([]);
    // Where one of them may not, none is turned; others still are.
    const other: Sized = { size: [20, 40], grain: "free" };
    expect(typesOf([free, { size: [30, 50] }, other]).types.map(({ row, turned }) => [row, turned])).toEqual([
      [0, false],
      [1, false],
      [1, true],
    ]);
  });
});
