import { chance } from "../src/cutting/chance.ts";
import type { ClothProblem, Piece } from "../src/cutting/index.ts";

/** An invented job of panels in a few sizes, from one endless bolt; the same for the same seed. */
export function clothJob({
  seed,
  pieces,
  each,
  repeatMm,
}: {
  seed: number;
  pieces: number;
  /** Pieces of one size. */
  each: number;
  repeatMm?: number;
}): ClothProblem {
  const draw = chance(seed);
  const widthMm = 1370 + Math.floor(draw() * 1630);
  const sizes = Array.from({ length: Math.max(1, Math.round(pieces / each)) }, () => ({
    widthMm: Math.min(widthMm, 300 + 5 * Math.floor(draw() * 245)),
    lengthMm: 600 + 5 * Math.floor(draw() * 481),
  }));
  const start = repeatMm === undefined ? {} : { start: { alongMm: 0 } };
  return {
    id: `demo-${seed}`,
    bolts: [{ id: "bolt", remnant: false, widthMm, flaws: [], costPerMm: 1 }],
    pieces: Array.from({ length: pieces }, (_, at): Piece => {
      const size = sizes[at % sizes.length] ?? { widthMm, lengthMm: 600 };
      return {
        id: `p${at}`,
        shade: `s${at}`,
        part: "face",
        grain: "fixed",
        nap: "one-way",
        ...size,
        ...start,
      };
    }),
    ...(repeatMm === undefined ? {} : { repeat: { alongMm: repeatMm, match: "straight" as const } }),
    gapMm: 0,
    cutting: { kind: "straight", stages: 3 },
    keep: { widthMm: 300, lengthMm: 500 },
    seed: 1,
  };
}
