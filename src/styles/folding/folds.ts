import { MOST_ROWS } from "../base/even-rows.ts";

/**
 * The rows of a flat shade.
 *
 * p rows of rings lie between p folds; the lowest half fold is the bottom section, the headrail
 * allowance T stays flat above the top fold, a skirt k may show below the stack:
 *
 *   L = k + F₁/2 + F₁ + F₂ + … + F_p + T,   F_i = F₁ − (i − 1)·c   (c = 0: even)
 *
 * which for even folds is the rule of the odd number of half folds, N = 2p + 1 and F = 2(L − T − k)/N:
 * soft-furnishing FAQ, “Calculating pockets spacing”. With T = 0 it is the rule without headrail,
 * s = L/(n − 1/2), of “How far apart do I space my rings / lift cords”, whose n counts the board line.
 */
export interface FoldAsk {
  lengthMm: number;
  headrailMm: number;
  skirtMm: number;
  /** Each fold smaller than the one below it by this. */
  gradeStepMm: number;
  largestFoldMm: number;
  smallestFoldMm: number;
  /** Highest allowed raised stack, top line to hem. */
  stackMm?: number;
  rows?: number;
  spacingMm?: number;
}

/** What was asked of the folds and does not hold. `length`: not one fold fits. */
export type Unmet = "largest" | "smallest" | "stack" | "headrail" | "length";

/** Folds as they are laid, mm. */
export interface FoldLayout {
  /** Fold lengths from the hem up, mm; one for each row. */
  foldsMm: number[];
  bottomSectionMm: number;
  headrailMm: number;
  skirtMm: number;
  raisedHeightMm: number;
  travelMm: number;
  /** What was asked for and does not hold; empty when all of it holds. */
  unmet: Unmet[];
}

/** Lowest fold for p rows, mm. */
export function lowestFoldMm(ask: FoldAsk, rows: number): number {
  const { lengthMm, headrailMm, skirtMm, gradeStepMm } = ask;
  return (lengthMm - headrailMm - skirtMm + (gradeStepMm * rows * (rows - 1)) / 2) / (rows + 1 / 2);
}

/** Largest lowest fold that keeps both the largest spacing and the stack limit, mm. */
export function foldLimitMm(ask: FoldAsk): number {
  const byStack =
    ask.stackMm === undefined ? Number.POSITIVE_INFINITY : 2 * (ask.stackMm - ask.headrailMm - ask.skirtMm);
  return Math.min(ask.largestFoldMm, byStack);
}

/**
 * Lays the rows for what the maker fixed: a row count, a spacing (what is left over goes to the headrail
 * allowance), a stack limit, or only the largest spacing. Where nothing satisfies all of it, the nearest
 * is laid and `unmet` says what gives.
 */
export function layFolds(ask: FoldAsk): FoldLayout {
  if (ask.lengthMm - ask.headrailMm - ask.skirtMm < ask.smallestFoldMm) return tooShort(ask);
  if (ask.spacingMm !== undefined) return bySpacing(ask, ask.spacingMm);
  return describeFolds(ask, foldList(ask, ask.rows ?? fewestRows(ask)), ask.headrailMm);
}

/** The fewest rows that keep every limit, or the count that misses them least. */
export function fewestRows(ask: FoldAsk): number {
  const limit = foldLimitMm(ask);
  let nearest = 1;
  let leastMiss = Number.POSITIVE_INFINITY;
  for (let rows = 1; rows <= MOST_ROWS; rows++) {
    const lowest = lowestFoldMm(ask, rows);
    const highest = lowest - (rows - 1) * ask.gradeStepMm;
    const miss = Math.max(0, lowest - limit) + Math.max(0, ask.smallestFoldMm - highest);
    if (miss < leastMiss - 1e-9) {
      leastMiss = miss;
      nearest = rows;
    }
    if (miss <= 1e-9) return rows;
  }
  return nearest;
}

function foldList(ask: FoldAsk, rows: number): number[] {
  // A step so steep that the top fold would vanish is eased until it is half the lowest.
  const steepest =
    rows < 2 ? ask.gradeStepMm : (ask.lengthMm - ask.headrailMm - ask.skirtMm) / (rows * (rows - 1));
  const gradeStepMm = Math.min(ask.gradeStepMm, Math.max(0, steepest));
  const lowest = lowestFoldMm({ ...ask, gradeStepMm }, rows);
  return Array.from({ length: rows }, (_, i) => lowest - i * gradeStepMm);
}

function bySpacing(ask: FoldAsk, spacingMm: number): FoldLayout {
  const room = ask.lengthMm - ask.skirtMm - spacingMm / 2;
  const fitting = Math.floor((room - ask.headrailMm) / spacingMm + 1e-9);
  const rows = ask.rows ?? Math.min(MOST_ROWS, Math.max(1, fitting));
  const headrailMm = room - rows * spacingMm;
  if (headrailMm < 0) {
    const folds = describeFolds(ask, foldList({ ...ask, gradeStepMm: 0 }, rows), ask.headrailMm);
    return { ...folds, unmet: [...new Set<Unmet>([...folds.unmet, "headrail"])] };
  }
  return describeFolds(
    ask,
    Array.from({ length: rows }, () => spacingMm),
    headrailMm,
  );
}

function tooShort(ask: FoldAsk): FoldLayout {
  const headrailMm = Math.min(ask.headrailMm, ask.lengthMm / 3);
  const folds = foldList({ ...ask, headrailMm, skirtMm: 0, gradeStepMm: 0 }, 1);
  return { ...describeFolds({ ...ask, skirtMm: 0 }, folds, headrailMm), unmet: ["length"] };
}

function describeFolds(ask: FoldAsk, foldsMm: number[], headrailMm: number): FoldLayout {
  const lowest = foldsMm[0] ?? 0;
  const highest = foldsMm.at(-1) ?? 0;
  const bottomSectionMm = ask.skirtMm + lowest / 2;
  const raisedHeightMm = headrailMm + bottomSectionMm;
  const unmet: Unmet[] = [];
  if (lowest > ask.largestFoldMm + 1e-6) unmet.push("largest");
  if (highest < ask.smallestFoldMm - 1e-6) unmet.push("smallest");
  if (ask.stackMm !== undefined && raisedHeightMm > ask.stackMm + 1e-6) unmet.push("stack");
  if (headrailMm < ask.headrailMm - 1e-6) unmet.push("headrail");
  return {
    foldsMm,
    bottomSectionMm,
    headrailMm,
    skirtMm: ask.skirtMm,
    raisedHeightMm,
    travelMm: ask.lengthMm - bottomSectionMm - headrailMm,
    unmet,
  };
}
