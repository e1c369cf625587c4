import type { Form, Grid } from "../shade-plan/index.ts";

/** Less cloth than this folds nowhere, mm. */
const LEAST_MM = 5;

/** Cloth of each fold once the shade is raised, from the lowest up: as far as each stretch is gathered. */
export function foldArcs(grid: Grid, form: Form): number[] {
  const rows = [...grid.rows].sort((a, b) => a.number - b.number);
  const between = (rows[0]?.yMm ?? 0) - (rows.at(-1)?.yMm ?? 0);
  return rows
    .map((row, i) => {
      const next = rows[i + 1];
      const cordMm = next === undefined ? Math.max(0, grid.travelMm - between) : row.yMm - next.yMm;
      const stretch = form.stretches.find((one) => one.row === row.number);
      const slackMm = stretch === undefined ? 0 : stretch.clothMm - (stretch.sewnMm ?? 0) - stretch.cordMm;
      return cordMm + Math.max(0, slackMm);
    })
    .filter((arcMm) => arcMm > LEAST_MM);
}
