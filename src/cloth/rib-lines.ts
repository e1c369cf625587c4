import type { Brief } from "../job/index.ts";
import type { Grid, RibLine } from "../shade/index.ts";

/**
 * Pocket lines: on the finished shade they are the rows; on the flat lining each pocket below has taken
 * up two depths and the pocket's own fold lies one depth further on:
 *
 *   line_i = row_i + 2·d·(i − 1) + d
 *
 * Soft-furnishing FAQ, “Calculating pockets spacing”: 13 cm half folds with 1 cm pockets are marked at
 * 14 cm, then every 28 cm.
 */
export function ribLines(brief: Brief, grid: Grid): RibLine[] {
  const { kind, pocketMm } = brief.making.ribs;
  if (kind === "none") return [];
  const takesUp = kind !== "strip-pocket";
  return grid.rows.map((row) => ({
    row: row.number,
    fromHemMm: row.fromHemMm,
    onLiningMm: takesUp ? row.fromHemMm + 2 * pocketMm * (row.number - 1) + pocketMm : row.fromHemMm,
  }));
}
