import type { Form, Grid, RibLine } from "../shade-plan/index.ts";
import type { ClothShade } from "./cloth-input.ts";

/**
 * Pocket lines: on the finished shade they are the rows; on the flat lining each pocket below has taken
 * up two depths and the pocket's own fold lies one depth further on:
 *
 *   line_i = row_i + 2·d·(i − 1) + d
 *
 * Soft-furnishing FAQ, “Calculating pockets spacing”: 13 cm half folds with 1 cm pockets are marked at
 * 14 cm, then every 28 cm.
 */
export function ribLines(shade: ClothShade, grid: Grid, form: Form): RibLine[] {
  const { kind, pocketMm } = shade.making.ribs;
  const takesUp = kind === "lining-pocket" || kind === "through-pocket" || kind === "face-pocket";
  return ribPlaces(grid, form).map((place, i) => ({
    ...place,
    onLiningMm: takesUp ? place.fromHemMm + 2 * pocketMm * i + pocketMm : place.fromHemMm,
  }));
}

/** From the hem up: at the rows that carry a rib, and midway to what the row above, or the headrail, leaves it to fold. */
function ribPlaces(grid: Grid, { ribs }: Form): Omit<RibLine, "onLiningMm">[] {
  const between = new Set(ribs.between);
  return grid.rows.flatMap(({ number, fromHemMm, yMm }, i) => {
    if (!ribs.rows.includes(number)) return [];
    const foldMm = yMm - (grid.rows[i + 1]?.yMm ?? Math.min(grid.headrailMm, yMm));
    return [
      { row: number, fromHemMm },
      ...(between.has(number)
        ? [{ row: number, between: true as const, fromHemMm: fromHemMm + foldMm / 2 }]
        : []),
    ];
  });
}
