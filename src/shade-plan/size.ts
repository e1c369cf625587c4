/** What measuring decides. Widths and heights seen from the room, mm. */
export interface Size {
  finishedWidthMm: number;
  finishedLengthMm: number;
  /** Level length of the board, end to end as it is seen from the room. */
  boardLengthMm: number;
  /** Length to cut where it lies on a slope. */
  boardOnSlopeMm?: number;
  /** Height of the top line (upper front edge of the board) above the floor, where the sill height is known. */
  topAboveFloorMm?: number;
  /** Height of the finished hem above the floor, where it is known. */
  hemAboveFloorMm?: number;
  /** What the opening measured: narrowest, widest, shortest, longest. */
  openingWidthMm: number;
  openingHeightMm: number;
  /** Left edge of the opening from the left finished edge, mm, where a neighbour puts the shade off its middle. */
  openingLeftMm?: number;
  /** A head that is not level: an arc or a slope, how far its low places lie below the top line. */
  head?: { kind: "angled" | "arched"; fallMm: number; high: "left" | "right" };
  /** Top of the opening below the top line, mm; absent where only the finished size was given. */
  openingTopMm?: number;
  widthSpreadMm: number;
  heightSpreadMm: number;
  /** Difference of the diagonals, where both were measured. */
  outOfSquareMm?: number;
  /** Measurements still to take or to take again, in plain words. */
  toMeasure: string[];
}
