import type { MotifAcross, Repeat } from "../job/index.ts";
import { type Motif, motifFallMm } from "../shade-plan/index.ts";
import { remainderMm } from "../units/index.ts";
import type { ClothShade } from "./cloth-input.ts";

/** One layer as cut: what lies past the finished outline, the flat size between hems, and what still shrinks. */
export interface Flat {
  edges: { leftMm: number; topMm: number };
  /** Between the hems, mm as cut. */
  widthMm: number;
  lengthMm: number;
  finishedWidthMm: number;
  finishedLengthMm: number;
  /** Share of one that it still loses in the width and the length of the shade. */
  shrinkWidth: number;
  shrinkLength: number;
}

/** From the upper cut edge down to where a repeat begins, mm as cut. */
export function repeatBelowTopMm(shade: ClothShade, flat: Flat, repeatMm: number): number {
  const { place, offsetMm } = shade.making.pattern;
  const asCut = { place, offsetMm: offsetMm / (1 - flat.shrinkLength) };
  return flat.edges.topMm + motifFallMm(asCut, flat.lengthMm, repeatMm);
}

/** How a pattern falls across where its maker does not say. */
export const USUAL_ACROSS = "centre-motif";

/** From the middle of the flat shade to the right, to where a repeat begins, mm as cut. */
export function repeatBesideMiddleMm(
  shade: ClothShade,
  flat: Flat,
  repeatMm: number,
  across: MotifAcross,
): number {
  const { acrossMm } = shade.making.pattern;
  return {
    "centre-motif": -repeatMm / 2,
    "between-motifs": 0,
    offset: acrossMm / (1 - flat.shrinkWidth) - flat.widthMm / 2,
  }[across];
}

/** The repeat across that counts: as given, or the width between two seams where it is not, or is wider than that. */
export function acrossRepeatMm(repeat: Repeat, usableMm: number, seamMm: number): number {
  const netMm = usableMm - 2 * seamMm;
  const given = repeat.horizontalMm;
  return given === undefined || given > netMm + 1e-6 ? netMm : given;
}

/** The repeat across was given and fits between two seams, so that columns of the pattern can be told. */
export function acrossIsKnown(repeat: Repeat, usableMm: number, seamMm: number): boolean {
  return repeat.horizontalMm !== undefined && repeat.horizontalMm <= usableMm - 2 * seamMm + 1e-6;
}

/** From the left usable edge to the left edge of a whole repeat: as given, else whole repeats lie centred. */
export function firstColumnMm(repeat: Repeat, repeatMm: number, usableMm: number): number {
  return repeat.startXMm ?? (usableMm % repeatMm) / 2;
}

/** Where the middle of the shade falls across the bolt. */
export interface CentreOnBolt {
  /** Place on the bolt of the middle of the shade. */
  centreMm: number;
  /** Column of the bolt whose left edge is the one that was placed; on a half drop odd ones lie half a repeat lower. */
  column: number;
  /** How far the pattern misses its place, mm: the cloth is not wide enough to centre it. */
  missMm: number;
}

/** Narrower than this share of the cloth no middle panel is cut, only to centre a motif. */
const LEAST_MIDDLE = 0.25;

/**
 * The place on the bolt where the middle of the shade falls, so that the pattern falls across as was asked: of all
 * such places the nearest to the middle of the cloth. A single panel must lie within the cloth; where none does, it
 * lies in the middle and the miss is reported.
 */
export function centreOnBolt(
  shade: ClothShade,
  flat: Flat,
  repeat: Repeat,
  bolt: { usableMm: number; seamMm: number; panelMm?: number; across: MotifAcross },
): CentreOnBolt {
  const { usableMm, seamMm, panelMm, across } = bolt;
  const middle = usableMm / 2;
  const repeatMm = acrossRepeatMm(repeat, usableMm, seamMm);
  if (!acrossIsKnown(repeat, usableMm, seamMm)) return { centreMm: middle, column: 0, missMm: 0 };
  const first = firstColumnMm(repeat, repeatMm, usableMm);
  const wanted = first - repeatBesideMiddleMm(shade, flat, repeatMm, across);
  const column = Math.round((middle - wanted) / repeatMm);
  const centreMm = wanted + column * repeatMm;
  const offMm = Math.abs(centreMm - middle);
  const slackMm = panelMm === undefined ? (usableMm / 2) * (1 - LEAST_MIDDLE) : (usableMm - panelMm) / 2;
  if (offMm <= slackMm + 1e-6) return { centreMm, column, missMm: 0 };
  const shown = Math.floor(
    (middle + repeatBesideMiddleMm(shade, flat, repeatMm, across) - first) / repeatMm + 1e-9,
  );
  return { centreMm: middle, column: shown, missMm: offMm };
}

/** Lattice of the pattern on the finished shade. */
export function motifOf(
  shade: ClothShade,
  flat: Flat,
  repeat: Repeat,
  at: { besideMiddleMm: number; acrossMm: number; alongMm: number; acrossKnown: boolean },
): Motif {
  const repeatYMm = at.alongMm * (1 - flat.shrinkLength);
  const repeatXMm = at.acrossMm * (1 - flat.shrinkWidth);
  const fallMm = motifFallMm(shade.making.pattern, flat.finishedLengthMm, repeatYMm);
  const lengthMm = flat.lengthMm * (1 - flat.shrinkLength);
  const alongMm = motifFallMm(shade.making.pattern, lengthMm, repeatYMm);
  return {
    originXMm: flat.finishedWidthMm / 2 + at.besideMiddleMm * (1 - flat.shrinkWidth),
    originYMm: remainderMm(fallMm, repeatYMm),
    originAlongMm: remainderMm(alongMm, repeatYMm),
    repeatXMm,
    repeatYMm,
    match: repeat.match,
    acrossKnown: at.acrossKnown,
  };
}
