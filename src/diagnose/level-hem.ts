import { markMm, type Ruler } from "../units/index.ts";

/** Height of the hem as it was measured at one column, above one and the same level line, mm. */
export interface MeasuredHem {
  column: number;
  xMm: number;
  heightMm: number;
}

/** What to do at one column: positive takes the hem up, by a shorter cord. */
export interface KnotMove {
  column: number;
  upMm: number;
}

export interface Levelling {
  /** Highest less lowest, mm. */
  spreadMm: number;
  /** Level that the fewest knots have to move to. */
  levelMm: number;
  /** Columns whose knot moves; none where all are within a mark of the ruler. */
  moves: KnotMove[];
  /** Slope of the straight line through the heights, over the width between the outer columns, mm: up to the right. */
  slopeMm: number;
  /** The heights lie on that line within a mark: the board slopes, not the knots. */
  straight: boolean;
}

/**
 * Which knot to move by how much. The level is that of as many columns as agree within one mark of the ruler,
 * the middle one of them; a straight slope is told apart, since that is the board and not the knots.
 *
 * @throws where fewer than two columns were measured
 */
export function levelHem(measured: readonly MeasuredHem[], ruler: Ruler): Levelling {
  if (measured.length < 2) throw new Error(`invalid measured: ${measured.length} columns`);
  const mark = markMm(ruler);
  const heights = measured.map(({ heightMm }) => heightMm);
  const levelMm = mostAgreed(heights, mark);
  const { slopeMm, worstMm } = straightLine(measured);
  const spreadMm = Math.max(...heights) - Math.min(...heights);
  return {
    spreadMm,
    levelMm,
    moves: measured
      .map(({ column, heightMm }) => ({ column, upMm: levelMm - heightMm }))
      .filter(({ upMm }) => Math.abs(upMm) > mark + 1e-9),
    slopeMm,
    straight: measured.length > 2 && spreadMm > mark && worstMm <= mark,
  };
}

/** Middle of the largest group that lies within one mark; the higher group where two are as large. */
function mostAgreed(heights: readonly number[], mark: number): number {
  const sorted = [...heights].sort((a, b) => a - b);
  let best: number[] = [];
  sorted.forEach((low, i) => {
    const group = sorted.slice(i).filter((height) => height <= low + mark + 1e-9);
    if (group.length >= best.length) best = group;
  });
  return ((best[0] ?? 0) + (best.at(-1) ?? 0)) / 2;
}

/** Least-squares line, its rise over the outer columns and the furthest that a height lies from it. */
function straightLine(measured: readonly MeasuredHem[]): { slopeMm: number; worstMm: number } {
  const n = measured.length;
  const meanX = measured.reduce((sum, { xMm }) => sum + xMm, 0) / n;
  const meanY = measured.reduce((sum, { heightMm }) => sum + heightMm, 0) / n;
  const across = measured.reduce((sum, { xMm }) => sum + (xMm - meanX) ** 2, 0);
  const along = measured.reduce((sum, { xMm, heightMm }) => sum + (xMm - meanX) * (heightMm - meanY), 0);
  const slope = across > 0 ? along / across : 0;
  const xs = measured.map(({ xMm }) => xMm);
  return {
    slopeMm: slope * (Math.max(...xs) - Math.min(...xs)),
    worstMm: Math.max(
      ...measured.map(({ xMm, heightMm }) => Math.abs(heightMm - meanY - slope * (xMm - meanX))),
    ),
  };
}
