/** One row of rings. Rows are numbered from the hem up, as they are marked. */
export interface Row {
  number: number;
  /** Above the finished hem, mm: what the maker marks. */
  fromHemMm: number;
  /**
   * Below the top line, mm, shade lowered. The top line is the upper front edge of the board:
   * the cloth hides the board's front, so the board fills y from 0 to its thickness
   * and the eyes and the lock hang below that.
   */
  yMm: number;
}

/** One column of rings, numbered from the left seen from the room. */
export interface Column {
  number: number;
  /** From the left finished edge, mm. */
  xMm: number;
}

/** The ring grid and how the shade folds on it. */
export interface Grid {
  rows: Row[];
  columns: Column[];
  /** Hem to first row, mm. */
  bottomSectionMm: number;
  /** Between neighbouring rows, from the hem up, mm; one fewer than rows. */
  spacingsMm: number[];
  /** Top row to the top line, headrail allowance included, mm. */
  topSectionMm: number;
  columnSpacingMm: number;
  /** Flat cloth above the gathered stack, mm. */
  headrailMm: number;
  /** Hem band showing below the stack, mm. */
  skirtMm: number;
  /** Top line to hem with the shade fully raised, mm. */
  raisedHeightMm: number;
  /** How far the bottom row rises from lowered to raised, mm. */
  travelMm: number;
  /** Height of the opening's glass that the raised stack still covers, mm. */
  coveredWhenRaisedMm: number;
}

/** From one column to the next, mm. */
export function columnSpacingMm(columns: readonly Column[]): number {
  return ((columns.at(-1)?.xMm ?? 0) - (columns[0]?.xMm ?? 0)) / Math.max(1, columns.length - 1);
}
