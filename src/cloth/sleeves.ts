import type { WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { ClothPlan, Grid, Size } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { inches, upToMark } from "../units/index.ts";

/** Width of a sleeve over a ring that stands up from the cloth, and how far beside it its edges are sewn, in rings. */
const SLEEVE_RINGS = sourced(3, "ratio", cite("our-choice", "arches over a ring that stands, with its cord"));
const SEWN_RINGS = sourced(1, "ratio", cite("our-choice", "one ring’s width to either side of the column"));
const TURN = sourced(inches(0.5), "mm", cite("common-practice", "1/2 in turned under"));

/**
 * Strips sewn over rings and cords, one along each column from the bottom row to the board, where the cords are
 * to be enclosed. The rings stay as they are, so the folds do too.
 */
export function sleeves(
  resolved: ResolvedShade,
  size: Size,
  grid: Grid,
  book: WorkingBook,
): Pick<ClothPlan, "sleeves"> {
  const count = grid.columns.length;
  if (resolved.rearCords !== "enclosed" || count === 0) return {};
  const ringMm = resolved.ring.diameterMm;
  const widthMm = book.figure("cloth.sleeve-width", {
    label: "Sleeve over the cords: cut width",
    symbol: "v",
    unit: "mm",
    formula: "n·D + 2·e",
    given: {
      n: [SLEEVE_RINGS.value, "ratio", "rings wide"],
      D: [ringMm, "mm", "ring"],
      e: [TURN.value, "mm", "turned under at either edge"],
    },
    cite: SLEEVE_RINGS.cite,
    compute: ({ n, D, e }) => n * D + 2 * e,
  });
  const lengthMm = book.figure("cloth.sleeve-length", {
    label: "Sleeve over the cords: cut length",
    symbol: "s",
    unit: "mm",
    formula: "max(0, L − f − t) + 2·e",
    given: {
      L: [size.finishedLengthMm, "mm", "finished length"],
      f: [grid.rows[0]?.fromHemMm ?? 0, "mm", "hem to the bottom row"],
      t: [resolved.board.thicknessMm, "mm", "thickness of the board"],
      e: [TURN.value, "mm", "turned in at either end"],
    },
    cite: TURN.cite,
    compute: ({ L, f, t, e }) => Math.max(0, L - f - t) + 2 * e,
  });
  const { ruler } = resolved.units;
  return {
    sleeves: {
      count,
      widthMm: upToMark(widthMm, ruler),
      lengthMm: upToMark(lengthMm, ruler),
      besideMm: SEWN_RINGS.value * ringMm,
    },
  };
}
