import { type CatenaryOutcome, catenaryOfArc, catenaryOfSag } from "../../mechanics/index.ts";

/** Nobody sees or cuts a sag below this. */
const STRAIGHT_MM = 1e-3;

/** A scallop deeper than this share of the length leaves nothing to gather or to shirr. */
export const DEEPEST_SHARE = 0.25;

/** One scallop between two columns: cloth across it, and how far its middle hangs below its corners, mm. */
export interface Scallop {
  spanMm: number;
  arcMm: number;
  sagMm: number;
  /** Parameter k of the catenary; absent where the scallop lies straight. */
  parameterMm?: number;
}

/** Cloth across decides how far the scallop hangs. */
export function scallopOfArc(spanMm: number, arcMm: number): Scallop {
  if (arcMm - spanMm < STRAIGHT_MM ** 2) return { spanMm, arcMm: Math.max(spanMm, arcMm), sagMm: 0 };
  return scallopFrom(spanMm, catenaryOfArc(spanMm, arcMm));
}

/** How far it hangs decides the cloth across. */
export function scallopOfSag(spanMm: number, sagMm: number): Scallop {
  if (sagMm < STRAIGHT_MM) return { spanMm, arcMm: spanMm, sagMm: 0 };
  return scallopFrom(spanMm, catenaryOfSag(spanMm, sagMm));
}

/** As deep as its cloth allows, but no deeper than the cloth that hangs there along the length. */
export function scallopWithin(spanMm: number, arcMm: number, mostSagMm: number): Scallop {
  const full = scallopOfArc(spanMm, arcMm);
  return full.sagMm > mostSagMm ? scallopOfSag(spanMm, mostSagMm) : full;
}

/** How far a catenary of this parameter has risen, so far from its middle, mm. */
export function riseMm(parameterMm: number, fromMiddleMm: number): number {
  // cosh(x/k) − 1 = 2 sinh²(x/2k), which keeps the digits of a shallow curve.
  return 2 * parameterMm * Math.sinh(fromMiddleMm / (2 * parameterMm)) ** 2;
}

function scallopFrom(spanMm: number, outcome: CatenaryOutcome): Scallop {
  switch (outcome.kind) {
    case "hangs": {
      const { arcMm, sagMm, parameterMm } = outcome.value;
      if (sagMm < STRAIGHT_MM) return { spanMm, arcMm, sagMm: 0 };
      return { spanMm, arcMm, sagMm, parameterMm };
    }
    case "taut":
    case "folded":
      return { spanMm, arcMm: outcome.value.arcMm, sagMm: outcome.value.sagMm };
    case "short":
    case "notConverged":
      return { spanMm, arcMm: spanMm, sagMm: 0 };
  }
}
