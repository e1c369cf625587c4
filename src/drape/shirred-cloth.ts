import type { Form } from "../shade-plan/index.ts";
import type { RaisedShape } from "../styles/index.ts";
import type { ColumnStretch } from "./column-stretch.ts";

/** Swags lie about this share of their sag apart, but never so close that they are ruffles. */
const PITCH_SHARE = 0.75;
const LEAST_PITCH_MM = 40;
/** More swags than this and each is taken larger. */
const MOST_SWAGS = 24;
/** The edge below the loop that hangs from the lowest rings, mm. */
const EDGE_MM = 4;

/** Cloth that is shirred onto tapes along its whole length. */
export function isShirred({ across, stretches }: Form): boolean {
  return (
    across === "gathered" && stretches.some(({ row, clothMm, cordMm }) => row > 0 && clothMm > cordMm + 1)
  );
}

/**
 * Shirred cloth from the top line to the hem, swag by swag as it was dressed: along the columns as long as its tape, which
 * the rings hold in every row; between them as long as it was cut. Below the lowest ring hangs the loop of the scallop,
 * its hem caught up to that ring.
 */
export function shirredCloth(form: Form, section: RaisedShape): ColumnStretch[] {
  const sagMm = form.swags[0]?.sagMm ?? 0;
  const longer = lengthwiseFullness(form);
  const folds = section.folds.filter(({ row }) => row > 0);
  const rowYMm = section.rows[0]?.yMm ?? 0;
  const headMm = folds.at(-1)?.upperYMm ?? rowYMm;
  const parts = [
    ...(headMm > 1e-6 ? [{ upperYMm: 0, lowerYMm: headMm, tapeMm: headMm, isRing: false }] : []),
    ...folds
      .toReversed()
      .map(({ upperYMm, lowerYMm, arcMm }) => ({ upperYMm, lowerYMm, tapeMm: arcMm, isRing: true })),
  ];
  const tapeMm = parts.reduce((sum, part) => sum + part.tapeMm, 0);
  const pitchMm = Math.max(LEAST_PITCH_MM, PITCH_SHARE * sagMm, tapeMm / MOST_SWAGS);
  const loopMm = Math.max(EDGE_MM, (form.stretches[0]?.clothMm ?? 0) - EDGE_MM);
  let fromHemMm = longer * tapeMm + loopMm + EDGE_MM;
  const found: ColumnStretch[] = [];
  const add = (stretch: Omit<ColumnStretch, "fromHemMm" | "risenMm">) => {
    const upper = fromHemMm;
    fromHemMm = Math.max(0, upper - stretch.arcMm);
    // It sinks between the tapes at any height, as far as its weft lets it.
    found.push({ ...stretch, risenMm: Number.POSITIVE_INFINITY, fromHemMm: [upper, fromHemMm] });
  };
  for (const part of parts) {
    const swags = Math.max(1, Math.round(part.tapeMm / pitchMm));
    const step = (part.lowerYMm - part.upperYMm) / swags;
    for (let k = 0; k < swags; k++)
      add({
        kind: "fold",
        arcMm: (longer * part.tapeMm) / swags,
        tapeMm: part.tapeMm / swags,
        upperYMm: part.upperYMm + k * step,
        lowerYMm: part.upperYMm + (k + 1) * step,
        ...(part.isRing && k === swags - 1 ? {} : { isFree: true }),
      });
  }
  add({ kind: "tied", arcMm: loopMm, upperYMm: rowYMm, lowerYMm: rowYMm });
  add({ kind: "hem", arcMm: EDGE_MM, upperYMm: rowYMm });
  return found;
}

/** Cloth on the length of its tape. */
function lengthwiseFullness({ stretches }: Form): number {
  const stretch = stretches.find(({ row, cordMm }) => row > 0 && cordMm > 0);
  return stretch === undefined ? 1 : stretch.clothMm / stretch.cordMm;
}
