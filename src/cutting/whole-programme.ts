/** Least cost over whole numbers: minimise cost·x where rowLower ≤ A·x ≤ rowUpper, 0 ≤ x ≤ upper, columns sparse. */
export interface WholeProgramme {
  cost: number[];
  upper: number[];
  rowLower: number[];
  rowUpper: number[];
  /** Column j holds `rows` and `values` from starts[j] up to starts[j + 1]. */
  starts: number[];
  rows: number[];
  values: number[];
}

/** The best whole numbers found, if any, and what no others can cost less than. */
export interface WholeAnswer {
  values?: Float64Array;
  bound: number;
}

/** A solver of such programmes, handed in by whoever has one; it may stop where the cost comes down to `target`. */
export type SolveWhole = (programme: WholeProgramme, target: number) => WholeAnswer;
