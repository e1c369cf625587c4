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
  /** Where it slants, or lies over a hem that does: heights and places above are then those half way across. */
  ends?: RowEnds;
}

/** Both ends of a row, at the edges seen from the room. */
interface RowEnds {
  /** Above the hem right below, as they are measured and marked, mm. */
  leftFromHemMm: number;
  rightFromHemMm: number;
  /** How much lower its right end lies than its left, mm; below 0 where it lies higher. */
  fallMm: number;
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
  /** How much lower the right end of the hem hangs than its left, mm, below 0 where it hangs higher; absent where it is level. */
  hemFallMm?: number;
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

/** Where a ring of a row lies at a place across the shade, mm below the top line. */
export function ringYMm({ yMm, ends }: Row, xMm: number, widthMm: number): number {
  return ends === undefined || widthMm <= 0 ? yMm : yMm + ends.fallMm * (xMm / widthMm - 1 / 2);
}

/** The same above the hem right below it, as it is marked, mm. */
export function ringFromHemMm({ fromHemMm, ends }: Row, xMm: number, widthMm: number): number {
  if (ends === undefined || widthMm <= 0) return fromHemMm;
  const { leftFromHemMm, rightFromHemMm } = ends;
  return leftFromHemMm + ((rightFromHemMm - leftFromHemMm) * xMm) / widthMm;
}

/** How much lower or higher than half way across a row lies at its ends, mm. */
export function slantMm({ ends }: Pick<Row, "ends">): number {
  return Math.abs(ends?.fallMm ?? 0) / 2;
}

/** Whether neither a row nor the hem is lower at one side than at the other. */
export function isLevel({ rows, hemFallMm }: Pick<Grid, "rows" | "hemFallMm">): boolean {
  return hemFallMm === undefined && rows.every((row) => slantMm(row) === 0);
}

/** The hem at a place across the shade, mm below the top line: the length is measured to its low end. */
export function hemYMm(
  { hemFallMm = 0 }: Pick<Grid, "hemFallMm">,
  { finishedWidthMm, finishedLengthMm }: { finishedWidthMm: number; finishedLengthMm: number },
  xMm: number,
): number {
  if (hemFallMm === 0 || finishedWidthMm <= 0) return finishedLengthMm;
  return finishedLengthMm - Math.abs(hemFallMm) / 2 + hemFallMm * (xMm / finishedWidthMm - 1 / 2);
}
