import { figureRule, type Worked } from "../figures/index.ts";
import type { ClothPlan, Grid, Size } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { upToMark } from "../units/index.ts";
import type { ClothShade } from "./cloth-input.ts";
import { TURN } from "./turned-under.ts";

/** Width of a sleeve over a ring that stands up from the cloth, and how far beside it its edges are sewn, in rings. */
const SLEEVE_RINGS = sourced(3, "ratio", cite("our-choice", "arches over a ring that stands, with its cord"));
const SEWN_RINGS = sourced(1, "ratio", cite("our-choice", "one ring’s width to either side of the column"));
const SLEEVE_WIDTH = figureRule({
  id: "cloth.sleeve-width",
  label: "Sleeve over the cords: cut width",
  symbol: "v",
  unit: "mm",
  formula: "n·D + 2·e",
  inputs: {
    n: ["ratio", "rings wide"],
    D: ["mm", "ring", "lift/rearCords", "lift/ring"],
    e: ["mm", "turned under at either edge"],
  },
  cite: SLEEVE_RINGS.cite,
  compute: ({ n, D, e }) => n * D + 2 * e,
});

const SLEEVE_LENGTH = figureRule({
  id: "cloth.sleeve-length",
  label: "Sleeve over the cords: cut length",
  symbol: "s",
  unit: "mm",
  formula: "max(0, L − f − t) + 2·e",
  inputs: {
    L: ["mm", "finished length", "lift/rearCords", "figure:measure.finished-length"],
    f: ["mm", "hem to the bottom row", "figure:shape.*"],
    t: ["mm", "thickness of the board", "board/section"],
    e: ["mm", "turned in at either end"],
  },
  cite: TURN.cite,
  compute: ({ L, f, t, e }) => Math.max(0, L - f - t) + 2 * e,
});

/**
 * Strips sewn over rings and cords, one along each column from the bottom row to the board, where the cords are
 * to be enclosed. The rings stay as they are, so the folds do too.
 */
export function sleeves(
  shade: Pick<ClothShade, "rearCords" | "ring" | "board" | "units">,
  size: Size,
  grid: Grid,
): Worked<Pick<ClothPlan, "sleeves">> {
  const count = grid.columns.length;
  if (shade.rearCords !== "enclosed" || count === 0) return { values: {}, workings: [] };
  const ringMm = shade.ring.diameterMm;
  const width = SLEEVE_WIDTH.figure({ n: SLEEVE_RINGS.value, D: ringMm, e: TURN.value });
  const length = SLEEVE_LENGTH.figure({
    L: size.finishedLengthMm,
    f: grid.rows[0]?.fromHemMm ?? 0,
    t: shade.board.thicknessMm,
    e: TURN.value,
  });
  const { ruler } = shade.units;
  return {
    values: {
      sleeves: {
        count,
        widthMm: upToMark(width.value, ruler),
        lengthMm: upToMark(length.value, ruler),
        besideMm: SEWN_RINGS.value * ringMm,
      },
    },
    workings: [width, length],
  };
}
