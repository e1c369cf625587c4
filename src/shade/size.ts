/** What measuring decides. Widths and heights seen from the room, mm. */
export interface Size {
  finishedWidthMm: number;
  finishedLengthMm: number;
  boardLengthMm: number;
  /** Height of the top line (upper front edge of the board) above the floor, where the sill height is known. */
  topAboveFloorMm?: number;
  /** Height of the finished hem above the floor, where it is known. */
  hemAboveFloorMm?: number;
  /** What the opening measured: narrowest, widest, shortest, longest. */
  openingWidthMm: number;
  openingHeightMm: number;
  /** Top of the opening below the top line, mm; absent where only the finished size was given. */
  openingTopMm?: number;
  widthSpreadMm: number;
  heightSpreadMm: number;
  /** Difference of the diagonals, where both were measured. */
  outOfSquareMm?: number;
  /** Measurements still to take or to take again, in plain words. */
  toMeasure: string[];
}
