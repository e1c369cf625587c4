import type { Bolt, ClothProblem, Piece } from "../../src/cutting/cloth/index.ts";

/** A piece by its size, and what else a test says of it. */
export interface Sized extends Partial<Piece> {
  size: readonly [widthMm: number, lengthMm: number];
}

/** Pieces `p0`, `p1`, … one way up, to be cut straight; bolts `b0`, `b1`, … of 100 mm, at 1 a millimetre, without end. */
export function givenCloth(
  pieces: readonly Sized[],
  bolts: readonly Partial<Bolt>[] = [{}],
  more: Partial<ClothProblem> = {},
): ClothProblem {
  return {
    id: "cloth",
    bolts: bolts.map((bolt, n) => ({
      id: `b${n}`,
      remnant: false,
      widthMm: 100,
      flaws: [],
      costPerMm: 1,
      ...bolt,
    })),
    pieces: pieces.map(({ size: [widthMm, lengthMm], ...piece }, n) => ({
      id: `p${n}`,
      shade: "s",
      part: "face",
      widthMm,
      lengthMm,
      grain: "fixed",
      nap: "one-way",
      ...piece,
    })),
    gapMm: 0,
    cutting: { kind: "straight", stages: 3 },
    keep: { widthMm: 10, lengthMm: 10 },
    seed: 1,
    ...more,
  };
}
