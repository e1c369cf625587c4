import type { ResolvedMaking } from "../../job/index.ts";
import type { Row, Size } from "../../shade-plan/index.ts";

/** More rows than any shade has: the search for a count ends here. */
export const MOST_ROWS = 200;

/** What evenly spaced rows follow from. */
interface EvenRowsAsk {
  lengthMm: number;
  headrailMm: number;
  /** Lowest row to the lowest point of the shade, mm. */
  bottomSectionMm: number;
  largestSpacingMm: number;
  smallestSpacingMm: number;
  rows?: number;
  spacingMm?: number;
}

/** What was asked of the rows and does not hold. `length`: not one row fits. */
export type UnmetRows = "largest" | "smallest" | "length";

/** Evenly spaced rows as they are laid, mm. */
export interface EvenRows {
  rows: Row[];
  spacingMm: number;
  headrailMm: number;
  bottomSectionMm: number;
  travelMm: number;
  /** What was asked for and does not hold. */
  unmet: UnmetRows[];
}

/** What even rows follow from besides the bottom section, as figures name what they rest on. */
export const EVEN_ROWS_BY = [
  "fold/rows",
  "fold/largestSpacingMm",
  "fold/headrailMm",
  "fold/spacingMm",
  "fold/smallestSpacingMm",
  "figure:shape.headrail-needed",
  "figure:measure.finished-length",
] as const;

/**
 * Rows from the lowest one up, evenly: raised, every ring stands at the headrail line.
 * The fewest that keep to the largest spacing; a fixed spacing leaves what is over to the headrail allowance.
 */
function layEvenRows(ask: EvenRowsAsk): EvenRows {
  const short = ask.lengthMm - ask.headrailMm - ask.bottomSectionMm < ask.smallestSpacingMm;
  const bottomSectionMm = short ? Math.min(ask.bottomSectionMm, ask.lengthMm / 3) : ask.bottomSectionMm;
  const leastHeadrailMm = short ? Math.min(ask.headrailMm, ask.lengthMm / 3) : ask.headrailMm;
  const room = ask.lengthMm - bottomSectionMm - leastHeadrailMm;
  const fixed = ask.spacingMm !== undefined && ask.spacingMm <= room;
  const count = fixed
    ? Math.min(ask.rows ?? MOST_ROWS, Math.floor(room / (ask.spacingMm ?? room) + 1e-9))
    : (ask.rows ?? fewestEvenRows(room, ask.largestSpacingMm));
  const rowCount = Math.min(MOST_ROWS, Math.max(1, count));
  const spacingMm = fixed ? (ask.spacingMm ?? room) : room / rowCount;
  const travelMm = rowCount * spacingMm;
  const unmet: UnmetRows[] = [];
  if (short) unmet.push("length");
  if (spacingMm > ask.largestSpacingMm + 1e-6) unmet.push("largest");
  if (spacingMm < ask.smallestSpacingMm - 1e-6) unmet.push("smallest");
  return {
    rows: Array.from({ length: rowCount }, (_, i) => {
      const fromHemMm = bottomSectionMm + i * spacingMm;
      return { number: i + 1, fromHemMm, yMm: ask.lengthMm - fromHemMm };
    }),
    spacingMm,
    headrailMm: ask.lengthMm - bottomSectionMm - travelMm,
    bottomSectionMm,
    travelMm,
    unmet: short ? ["length"] : unmet,
  };
}

/** The same for one shade, by its settings of the folds and what its board and lift take at the head. */
export function evenRowsOf(
  fold: ResolvedMaking["fold"],
  { finishedLengthMm }: Pick<Size, "finishedLengthMm">,
  headrailNeededMm: number,
  bottomSectionMm: number,
): EvenRows {
  return layEvenRows({
    lengthMm: finishedLengthMm,
    headrailMm: fold.headrailMm ?? headrailNeededMm,
    bottomSectionMm,
    largestSpacingMm: fold.largestSpacingMm,
    smallestSpacingMm: Math.min(fold.smallestSpacingMm, fold.largestSpacingMm),
    rows: fold.rows,
    spacingMm: fold.spacingMm,
  });
}

/** Fewest rows over this height whose spacing keeps to the largest. */
export function fewestEvenRows(heightMm: number, largestMm: number): number {
  return Math.min(MOST_ROWS, Math.max(1, Math.ceil(heightMm / largestMm - 1e-9)));
}
