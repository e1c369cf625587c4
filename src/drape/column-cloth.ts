import type { Form, Grid } from "../shade-plan/index.ts";
import { hemBelowRowMm, type RaisedShape } from "../styles/index.ts";
import type { ColumnStretch } from "./column-stretch.ts";
import { isShirred, shirredCloth } from "./shirred-cloth.ts";

/** Cloth that stays drawn up below the lowest row: how much, in how many loops. */
export function tiedCloth({ pouf, across, stretches, swags, tiedRings = 0 }: Form): {
  clothMm: number;
  loops: number;
} {
  if (pouf !== undefined && pouf.loops > 0) return pouf;
  const [lowest] = stretches;
  if (across !== "gathered" || lowest === undefined || tiedRings === 0) return { clothMm: 0, loops: 0 };
  return { clothMm: lowest.clothMm - lowest.cordMm + (swags[0]?.sagMm ?? 0), loops: tiedRings };
}

/** The cloth at a column from the top line to the hem, as the rings hold it at one height. */
export function columnCloth(form: Form, grid: Grid, section: RaisedShape): ColumnStretch[] {
  if (isShirred(form)) return shirredCloth(form, section);
  const rows = section.rows;
  const loweredMm = new Map(grid.rows.map(({ number, yMm }) => [number, yMm]));
  const folds = section.folds.filter(({ row }) => row > 0);
  const tied = tiedCloth(form);
  const rowYMm = rows[0]?.yMm ?? 0;
  // Where the cloth below the lowest ring hangs in a fold too, it is longer than its place.
  const lowestFold = section.folds.find(({ row }) => row === 0);
  const hemMm =
    tied.loops > 0
      ? (form.stretches[0]?.clothMm ?? 0) - tied.clothMm
      : (lowestFold?.arcMm ?? hemBelowRowMm(grid, form));
  const found: ColumnStretch[] = [];
  let fromHemMm = 0;
  const add = (kind: ColumnStretch["kind"], arcMm: number, risenMm: number, yMm: [number, number?]) => {
    const [upperYMm, lowerYMm] = yMm;
    const lower = fromHemMm;
    fromHemMm += arcMm;
    found.unshift({
      ...{ kind, arcMm, risenMm, upperYMm, fromHemMm: [fromHemMm, lower] },
      ...(lowerYMm === undefined ? {} : { lowerYMm }),
    });
  };
  add("hem", Math.max(MIN_HEM_MM, hemMm), section.liftMm, [rowYMm]);
  for (let i = 0; i < tied.loops; i++)
    add("tied", tied.clothMm / tied.loops, section.liftMm, [rowYMm, rowYMm]);
  for (const { row, arcMm, upperYMm, lowerYMm } of folds)
    add("fold", arcMm, (loweredMm.get(row) ?? lowerYMm) - lowerYMm, [upperYMm, lowerYMm]);
  const headMm = folds.at(-1)?.upperYMm ?? rowYMm;
  if (headMm > 0) add("head", headMm, 0, [0, headMm]);
  return found;
}

/** A hem that lies in the very row still has an edge, mm. */
const MIN_HEM_MM = 4;
