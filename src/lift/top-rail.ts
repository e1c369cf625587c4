import { figureRuleOf, type Worked } from "../figures/index.ts";
import { STYLE_TRAITS } from "../job/index.ts";
import type { Grid, TopRail } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { upToMark } from "../units/index.ts";
import type { LiftInput } from "./lift-input.ts";

/** A stiff rail hangs straight between cords so far apart. */
const RAIL_BAY = sourced(900, "mm", cite("our-choice", "a stiff flat bar on edge"));

const RAIL_CORD = figureRuleOf<{ column: number }>()({
  id: ({ column }) => `rig.rail-cord-${column}-length`,
  label: ({ column }) => `Rail cord at column ${column}: length`,
  symbol: ({ column }) => `a${column}`,
  unit: "mm",
  formula: "abs(X − x) + v + t + k",
  inputs: {
    X: [
      "mm",
      "end of the board on the side of its lock, from the left edge",
      "lift/controlSide",
      "figure:measure.finished-width",
    ],
    x: ["mm", "column, from the left edge", "columns/edgeInsetMm", "figure:shape.columns"],
    v: ["mm", "how far the rail is let down", "fold/topDropMm", "figure:shape.raised-height"],
    t: ["mm", "tail with the rail let down", "lift/tailMm", "figure:measure.finished-length"],
    k: ["mm", "knots and threading", "lift/knotsMm"],
  },
  cite: cite("geometry", "run, drop, tail and knots; the rail hangs at the board when it is up"),
  compute: ({ X, x, v, t, k }) => Math.abs(X - x) + v + t + k,
});

/**
 * The upper edge of a shade that can be let down: a rail on cords of its own, over a lock of its own at the far end
 * of the board. Undefined where the shade hangs from the board.
 */
export function topRail({
  shade,
  size,
  grid,
}: Pick<LiftInput, "shade" | "size" | "grid">): Worked<TopRail | undefined> {
  const dropMm = Math.min(
    shade.making.fold.topDropMm,
    Math.max(0, size.finishedLengthMm - grid.raisedHeightMm),
  );
  if (dropMm <= 0 || !STYLE_TRAITS[shade.style].takesTopRail) return { values: undefined, workings: [] };
  const { controlSide, knotsMm, tailMm = size.finishedLengthMm / 2 } = shade.making.lift;
  const side = controlSide === "left" ? "right" : "left";
  const lockMm = side === "left" ? 0 : size.finishedWidthMm;
  const columns = railColumns(grid);
  const lengths = columns.map(({ number, xMm }) =>
    RAIL_CORD.figure({ X: lockMm, x: xMm, v: dropMm, t: tailMm, k: knotsMm }, { column: number }),
  );
  const cords = columns.map(({ number, xMm }, i) => {
    const lengthMm = lengths[i]?.value ?? 0;
    return { column: number, xMm, lengthMm, cutMm: upToMark(lengthMm, shade.units.ruler) };
  });
  const values: TopRail = {
    dropMm,
    side,
    railMm: Math.max(0, size.finishedWidthMm - shade.making.board.barShorterMm),
    cords,
    tailDownMm: tailMm,
    tailUpMm: tailMm + dropMm,
    cordTotalMm: cords.reduce((sum, { cutMm }) => sum + cutMm, 0),
  };
  return { values, workings: lengths };
}

/** The outer columns, and as many between as keep the rail straight. */
function railColumns({ columns }: Grid): Grid["columns"] {
  const [first] = columns;
  const last = columns.at(-1);
  if (first === undefined || last === undefined || columns.length < 2) return columns;
  const bays = Math.max(1, Math.ceil((last.xMm - first.xMm) / RAIL_BAY.value));
  const step = (columns.length - 1) / bays;
  // Taken from both ends alike, so that a shade worked on the left is the mirror image of one worked on the right.
  const at = (i: number): number[] =>
    2 * i === bays ? [Math.floor(i * step), Math.ceil(i * step)] : [Math.round(Math.min(i, bays - i) * step)];
  const chosen = new Set(
    Array.from({ length: bays + 1 }, (_, i) =>
      at(i).map((n) => (2 * i > bays ? columns.length - 1 - n : n)),
    ).flat(),
  );
  return columns.filter((_, i) => chosen.has(i));
}
