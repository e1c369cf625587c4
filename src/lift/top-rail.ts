import type { WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { Grid, Size, TopRail } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { upToMark } from "../units/index.ts";

/** A stiff rail hangs straight between cords so far apart. */
const RAIL_BAY = sourced(900, "mm", cite("our-choice", "a stiff flat bar on edge"));

/**
 * The upper edge of a shade that can be let down: a rail on cords of its own, over a lock of its own at the far end
 * of the board. Undefined where the shade hangs from the board.
 */
export function topRail(
  resolved: ResolvedShade,
  size: Size,
  grid: Grid,
  book: WorkingBook,
): TopRail | undefined {
  const dropMm = Math.min(
    resolved.making.fold.topDropMm,
    Math.max(0, size.finishedLengthMm - grid.raisedHeightMm),
  );
  if (dropMm <= 0 || !hangsFromRail(resolved)) return undefined;
  const side = resolved.making.lift.controlSide === "left" ? "right" : "left";
  const columns = railColumns(grid);
  const lockMm = side === "left" ? 0 : size.finishedWidthMm;
  const tailMm = resolved.making.lift.tailMm ?? size.finishedLengthMm / 2;
  const { knotsMm } = resolved.making.lift;
  const cords = columns.map(({ number, xMm }) => {
    const lengthMm = book.figure(`rig.rail-cord-${number}-length`, {
      label: `Rail cord at column ${number}: length`,
      symbol: `a${number}`,
      unit: "mm",
      formula: "abs(X − x) + v + t + k",
      given: {
        X: [lockMm, "mm", "end of the board on the side of its lock, from the left edge"],
        x: [xMm, "mm", "column, from the left edge"],
        v: [dropMm, "mm", "how far the rail is let down"],
        t: [tailMm, "mm", "tail with the rail let down"],
        k: [knotsMm, "mm", "knots and threading"],
      },
      cite: cite("geometry", "run, drop, tail and knots; the rail hangs at the board when it is up"),
      compute: ({ X, x, v, t, k }) => Math.abs(X - x) + v + t + k,
    });
    return { column: number, xMm, lengthMm, cutMm: upToMark(lengthMm, resolved.units.ruler) };
  });
  return {
    dropMm,
    side,
    railMm: Math.max(0, size.finishedWidthMm - resolved.making.board.barShorterMm),
    cords,
    tailDownMm: tailMm,
    tailUpMm: tailMm + dropMm,
    cordTotalMm: cords.reduce((sum, { cutMm }) => sum + cutMm, 0),
  };
}

/** Only flat cloth hangs from a rail as it hangs from a board. */
export function hangsFromRail({ style }: Pick<ResolvedShade, "style">): boolean {
  return style === "flat" || style === "ribbed";
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
