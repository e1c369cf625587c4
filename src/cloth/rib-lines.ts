import type { Brief } from "../job/index.ts";
import type { Form, Grid, RibLine } from "../shade/index.ts";

/**
 * Pocket lines: on the finished shade they are the rows; on the flat lining each pocket below has taken
 * up two depths and the pocket's own fold lies one depth further on:
 *
 *   line_i = row_i + 2·d·(i − 1) + d
 *
 * Soft-furnishing FAQ, “Calculating pockets spacing”: 13 cm half folds with 1 cm pockets are marked at
 * 14 cm, then every 28 cm.
 */
export function ribLines(brief: Brief, grid: Grid, form: Form): RibLine[] {
  const { kind, pocketMm } = brief.making.ribs;
  const takesUp = kind === "lining-pocket" || kind === "through-pocket";
  const ribbed = grid.rows.filter(({ number }) => form.ribs.rows.includes(number));
  return ribbed.map((row, i) => ({
    row: row.number,
    fromHemMm: row.fromHemMm,
    onLiningMm: takesUp ? row.fromHemMm + 2 * pocketMm * i + pocketMm : row.fromHemMm,
  }));
}
