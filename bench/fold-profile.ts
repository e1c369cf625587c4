import {
  type FoldCloth,
  type FoldSpan,
  foldsAtHeight,
  rigidityNmm,
  weightNPerMm2,
} from "../src/mechanics/index.ts";
import { type Figure, median, samplesOf } from "./figure.ts";

const FOLDS = 8;
const ARC_MM = 200;
const HEIGHTS = 60;

/** Sixty heights of a shade of eight folds, every fold of it, nothing known beforehand: what the slider asks for in all. */
export function foldProfile(): Figure {
  const heights = Array.from({ length: HEIGHTS }, (_, i) => placesAt((FOLDS * ARC_MM * i) / (HEIGHTS - 1)));
  const draw = () => {
    // A new cloth has no shapes kept from the last round.
    const cloth = liningAndCotton();
    for (const places of heights)
      if (foldsAtHeight(cloth, places) === undefined) throw new Error("not converged");
  };
  return {
    name: "fold.profile",
    value: median(samplesOf(draw, { warm: 10, times: 20 })),
    unit: "ms",
    goal: 20,
    better: "lower",
  };
}

function placesAt(liftMm: number): FoldSpan[] {
  let left = liftMm;
  return Array.from({ length: FOLDS }, () => {
    const take = Math.min(ARC_MM, left);
    left -= take;
    return { arcMm: ARC_MM, gapMm: Math.max(0, ARC_MM - take) };
  });
}

function liningAndCotton(): FoldCloth {
  return {
    weightNPerMm2: weightNPerMm2(370),
    rigidityNmm: rigidityNmm(370, 23.4),
    thicknessMm: 0.8,
    skirt: { lengthMm: 100, weightNPerMm: 0.0048, centreMm: 92 },
    paneMm: 38,
  };
}
