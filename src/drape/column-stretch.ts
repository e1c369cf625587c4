/** Cloth at a column, from one ring to the next below it, or from the lowest ring to the hem. */
export interface ColumnStretch {
  kind: "head" | "fold" | "tied" | "hem";
  arcMm: number;
  /** Where its upper end is held, mm below the top line; its lower end, unless that is the hem. */
  upperYMm: number;
  lowerYMm?: number;
  /** How far its lower end has risen since the shade was down, mm. */
  risenMm: number;
  /** Above the hem along the cloth, mm: of its upper and its lower end. */
  fromHemMm: readonly [upper: number, lower: number];
  /** Tape that it is drawn up on at the columns, mm; where no ring holds its lower end, `lowerYMm` is about where that hangs. */
  tapeMm?: number;
  isFree?: boolean;
}
