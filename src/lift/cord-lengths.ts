/** Cords of one shade: every length in mm, columns and lock from one and the same edge. */
export interface CordLengthsInput {
  columnsMm: readonly number[];
  lockMm: number;
  /** From the bottom row of rings to the top line: finished length − first-row height. */
  riseMm: number;
  /** Below the lock with the shade lowered. */
  tailMm: number;
  /** Knots and threading, each cord. */
  knotsMm: number;
}

/** (L − first-row height) + distance of the column to the lock + tail + knots: each cord, shade lowered, mm. */
export function cordLengths({ columnsMm, lockMm, riseMm, tailMm, knotsMm }: CordLengthsInput): number[] {
  return columnsMm.map((column) => cordLength(riseMm, column, lockMm, tailMm, knotsMm));
}

/** The same of one cord, mm. */
export function cordLength(
  riseMm: number,
  columnMm: number,
  lockMm: number,
  tailMm: number,
  knotsMm: number,
): number {
  return riseMm + Math.abs(lockMm - columnMm) + tailMm + knotsMm;
}
