import { FIT_SLACK } from "../units/index.ts";

/** Pieces side by side in as many widths of cloth as laying the widest first takes. */
export interface FirstFit {
  /** For each piece, in the order given: the number of its width, and where it begins across it, mm. */
  places: { drop: number; xMm: number }[];
  drops: number;
}

/** One that is wider than the cloth has a width of its own. */
export function firstFit(piecesMm: readonly number[], usableMm: number): FirstFit {
  const usedMm: number[] = [];
  const places: FirstFit["places"] = [];
  const widestFirst = [...piecesMm.entries()].toSorted(([, a], [, b]) => b - a);
  for (const [index, widthMm] of widestFirst) {
    const at = usedMm.findIndex((used) => used + widthMm <= usableMm + FIT_SLACK);
    const drop = at < 0 ? usedMm.length : at;
    const xMm = usedMm[drop] ?? 0;
    usedMm[drop] = xMm + widthMm;
    places[index] = { drop, xMm };
  }
  return { places, drops: usedMm.length };
}
