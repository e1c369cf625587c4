import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { ALL_LAID } from "./decoder.ts";
import { FitMasks } from "./fit-masks.ts";
import { ANY_LOT, type StepGrid, stepGridOf } from "./grid.ts";
import type { Bolt, Piece } from "./index.ts";
import { LayerDecoder } from "./layer-decoder.ts";

/** Sizes of pieces on one endless bolt of 100 mm, a step a tenth. */
function plain(sizes: readonly Sized["size"][], more: Partial<Piece> = {}): StepGrid {
  return stepGridOf(
    givenCloth(
      sizes.map((size) => ({ size, ...more })),
      [{}],
      { cutting: { kind: "straight" } },
    ),
  );
}

const ten = (sizes: readonly (readonly [number, number])[]) =>
  plain(sizes.map(([w, h]) => [w * 10, h * 10] as const));

describe("layers", () => {
  test("are filled up even where nothing longer than the table may be cut along", () => {
    const grid = {
      ...ten([
        [4, 3],
        [4, 3],
        [4, 3],
      ]),
      longestLayer: 600,
    };
    const decoder = new LayerDecoder(grid, new FitMasks(grid.items), [0], 3);
    const lengthsOf = (choice: number) => {
      decoder.bits.fill(choice);
      decoder.setLengths([900]);
      decoder.lay(Number.POSITIVE_INFINITY);
      return [...decoder.y];
    };
    // Two below each other are as long as the table, three are not: the third lies beside them.
    expect(lengthsOf(0)).toEqual([0, 0, 300]);
    expect(lengthsOf(1)).toEqual([0, 300, 0]);
    expect(lengthsOf(2)).toEqual([0, 300, 0]);
    expect(lengthsOf(3)).toEqual([0, 0, 300]);
  });

  // By hand, in centimetres on cloth 10 wide, each piece opening what is left for it.
  test("hold the opening piece alone, one or two below it, or all there is, as its choice says", () => {
    const placesOf = (choice: number, stages: number, length = 12) => {
      const grid = ten([
        [6, 3],
        [6, 2],
        [6, 1],
        [4, 6],
      ]);
      const decoder = new LayerDecoder(grid, new FitMasks(grid.items), [0], stages);
      decoder.bits[0] = choice;
      decoder.setLengths([100 * length]);
      expect(decoder.lay(Number.POSITIVE_INFINITY)).toBe(ALL_LAID);
      return grid.items.map((_, item) => [(decoder.x[item] ?? 0) / 100, (decoder.y[item] ?? 0) / 100]);
    };
    const below = [
      [0, 0],
      [0, 3],
      [0, 5],
    ];
    // The long one of 4 finds no room beside 3 or 5, but beside 6.
    expect(placesOf(0, 3)).toEqual([...below, [0, 6]]);
    expect(placesOf(1, 3)).toEqual([...below, [0, 6]]);
    expect(placesOf(2, 3)).toEqual([...below, [6, 0]]);
    expect(placesOf(3, 3)).toEqual([...below, [0, 6]]);
    // On 11 it finds none below the others.
    expect(placesOf(3, 3, 11)).toEqual([...below, [6, 0]]);
    // In two stages nothing lies below another in a layer.
    expect(placesOf(2, 2)).toEqual([...below, [0, 6]]);
  });

  // By hand, on a repeat of 50 mm and cloth of 100: the first begins at 20 below a row, the other at 5. Nearest first goes
  // for the second at 5, and for the first behind it at 70; otherwise 20, and 55 for the other.
  test("begin with the piece that loses least before it, where the choice of the first says so", () => {
    const sizes = [90, 90].map((w) => ({ size: [w, 30] as const }));
    const pieces = sizes.map((one, n) => ({ ...one, start: { alongMm: n === 0 ? 20 : 5 } }));
    const grid = stepGridOf(givenCloth(pieces, [{}], { repeat: { alongMm: 50, match: "straight" } }));
    const decoder = new LayerDecoder(grid, new FitMasks(grid.items), [0], 3);
    expect(decoder.choices).toBe(8);
    const placesOf = (first: number, other: number) => {
      decoder.bits.set([first, other]);
      decoder.setLengths([2000]);
      expect(decoder.lay(Number.POSITIVE_INFINITY)).toBe(ALL_LAID);
      return [...decoder.y];
    };
    for (const choice of [4, 5, 6, 7]) expect(placesOf(choice, 0)).toEqual([700, 50]);
    for (const choice of [0, 1, 2, 3]) expect(placesOf(choice, 7)).toEqual([200, 550]);
  });

  test("begin beside or below a flaw, whichever the first piece finds room at", () => {
    const flawed = (flaw: { xMm: number; yMm: number; widthMm: number; lengthMm: number }) => {
      const problem = givenCloth(
        [{ size: [70, 30] }, { size: [40, 20] }],
        [{ flaws: [flaw] } satisfies Partial<Bolt>],
      );
      const grid = stepGridOf(problem);
      const decoder = new LayerDecoder(grid, new FitMasks(grid.items), [0], 3);
      decoder.setLengths([2000]);
      expect(decoder.lay(Number.POSITIVE_INFINITY)).toBe(ALL_LAID);
      return grid.items.map((_, item) => [(decoder.x[item] ?? 0) / 10, (decoder.y[item] ?? 0) / 10]);
    };
    // Beside 20 mm at the left there are 80 for 70; 40 goes behind it.
    expect(flawed({ xMm: 0, yMm: 10, widthMm: 20, lengthMm: 10 })).toEqual([
      [20, 0],
      [0, 30],
    ]);
    // Beside 50 mm there is room for the second alone: it goes first, the other behind the flaw.
    expect(flawed({ xMm: 0, yMm: 0, widthMm: 50, lengthMm: 15 })).toEqual([
      [0, 20],
      [50, 0],
    ]);
    // Across the whole width none: both lie behind it.
    expect(flawed({ xMm: 0, yMm: 5, widthMm: 100, lengthMm: 10 })).toEqual([
      [0, 15],
      [0, 45],
    ]);
  });
});

// By hand, on a repeat of 50 mm and cloth of 100.
describe("pieces on a repeat", () => {
  const decoderFor = (
    pieces: readonly (readonly [w: number, h: number, alongMm: number])[],
    lengthMm = 500,
  ) => {
    const sized = pieces.map(([w, h, alongMm]): Sized => ({ size: [w, h], start: { alongMm } }));
    const grid = stepGridOf(givenCloth(sized, [{}], { repeat: { alongMm: 50, match: "straight" } }));
    const decoder = new LayerDecoder(grid, new FitMasks(grid.items), [0], 3);
    decoder.setLengths([10 * lengthMm]);
    return decoder;
  };
  const placesOf = (decoder: LayerDecoder) => {
    expect(decoder.lay(Number.POSITIVE_INFINITY)).toBe(ALL_LAID);
    return Array.from(decoder.x, (x, item) => [x / 10, (decoder.y[item] ?? 0) / 10]);
  };

  test("go in their order, but one that fills the width or the length goes before", () => {
    const below = (width: number) =>
      placesOf(
        decoderFor([
          [90, 30, 20],
          [width, 30, 5],
        ]),
      );
    expect(below(99)).toEqual([
      [0, 20],
      [0, 55],
    ]);
    expect(below(100)).toEqual([
      [0, 70],
      [0, 5],
    ]);
    const beside = (length: number) =>
      placesOf(
        decoderFor([
          [40, 50, 0],
          [30, 30, 10],
          [20, length, 0],
        ]),
      );
    expect(beside(49)).toEqual([
      [0, 0],
      [40, 10],
      [70, 0],
    ]);
    expect(beside(50)).toEqual([
      [0, 0],
      [60, 10],
      [40, 0],
    ]);
  });

  test("stand back for the one that loses least, each as its own choice says", () => {
    const three = [
      [90, 30, 20],
      [90, 30, 5],
      [90, 30, 2],
    ] as const;
    const along = (...choices: number[]) => {
      const decoder = decoderFor(three);
      decoder.bits.set(choices);
      return placesOf(decoder).map(([, y]) => y);
    };
    // At 2 the third, to 32; from there the second loses 23, the first 38.
    expect(along(4, 0, 0)).toEqual([120, 55, 2]);
    // At 20 the first, to 50; from there the second loses 5, the third 2.
    expect(along(0, 7, 0)).toEqual([20, 105, 52]);
    expect(along(0, 0, 7)).toEqual([20, 55, 102]);
  });

  test("leave as lost what no piece covers, and lose no more than they may", () => {
    // On 60 one of two begins at 20; 100 × 60 less 90 × 30 are lost.
    const decoder = decoderFor(
      [
        [90, 30, 20],
        [90, 30, 20],
      ],
      60,
    );
    const lost = 100 * (6000 - 2700);
    expect(decoder.lay(Number.POSITIVE_INFINITY)).toBe(lost);
    expect([...decoder.bolt]).toEqual([0, -1]);
    expect(decoder.lay(lost)).toBe(lost);
    expect(decoder.lay(lost - 1)).toBeGreaterThan(lost - 1);
  });
});

describe("lots", () => {
  test("that a group may be held to are its own, or those with cloth enough, the largest first", () => {
    const grid = plain([[50, 40]]);
    const [bolt] = grid.bolts;
    if (bolt === undefined) throw new Error("no bolt");
    const bolts = [
      { ...bolt, lot: 0, h: 100 },
      { ...bolt, lot: 1, h: 300 },
      { ...bolt, lot: 2, h: 90 },
      { ...bolt, lot: 0, h: 250 },
    ];
    const of = (lotAreas: number[], boundLots: number[]) =>
      new LayerDecoder({ ...grid, bolts, lotAreas, boundLots }, new FitMasks(grid.items), [0, 1, 2, 3], 3)
        .lotChoices;
    expect(of([90_000, 90_001, 350_001], [ANY_LOT, ANY_LOT, ANY_LOT])).toEqual([[0, 1, 2], [0, 1], []]);
    expect(of([90_000, 1], [2, ANY_LOT])).toEqual([[2], [0, 1, 2]]);
  });
});
