import { LEAST_FULLNESS, MOST_FULLNESS } from "./fullness.ts";

/** A vertical repeat, and the tape on which it should come back, mm. */
export interface RepeatAsk {
  repeatMm: number;
  tapeMm: number;
  /** Cloth over tape as it was wished for. */
  fullness: number;
  /** Fixed by the maker. */
  repeats?: number;
  folds?: number;
}

/** So many whole repeats fill so many folds. */
export interface RepeatMatch {
  repeats: number;
  folds: number;
}

/** A pattern that comes back after more folds than this is not seen to come back. */
const MOST_FOLDS = 4;
const MOST_REPEATS = 12;

/**
 * Whole repeats m on whole folds n, so that cloth between marks m·R/n keeps the usual fullness on this tape and
 * every n-th fold shows the same motif. The fewest folds come first, then what lies nearest to the wished fullness.
 * What the maker fixed is kept, whatever the fullness; undefined where nothing meets it.
 */
export function matchRepeat(ask: RepeatAsk): RepeatMatch | undefined {
  const { repeatMm, tapeMm, repeats, folds } = ask;
  if (repeats !== undefined && folds !== undefined)
    return (repeats * repeatMm) / folds >= tapeMm ? { repeats, folds } : undefined;
  for (const n of folds === undefined ? upTo(MOST_FOLDS) : [folds]) {
    const found = (repeats === undefined ? upTo(MOST_REPEATS) : [repeats])
      .filter((m) => {
        const fullness = (m * repeatMm) / n / tapeMm;
        return fullness >= LEAST_FULLNESS - 1e-9 && fullness <= MOST_FULLNESS + 1e-9;
      })
      .sort((a, b) => away(ask, a, n) - away(ask, b, n))[0];
    if (found !== undefined) return { repeats: found, folds: n };
  }
  return undefined;
}

function away({ repeatMm, tapeMm, fullness }: RepeatAsk, repeats: number, folds: number): number {
  return Math.abs((repeats * repeatMm) / folds / tapeMm - fullness);
}

function upTo(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i + 1);
}
