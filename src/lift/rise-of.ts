import { type HeadShape, headYMm, type Row, ringYMm } from "../shade-plan/index.ts";

/** From the bottom ring of a column up to the head over it, mm; the whole length of a shade without rows. */
export function riseOf(
  bottom: Row | undefined,
  size: HeadShape & { finishedLengthMm: number },
  xMm: number,
): number {
  const { finishedLengthMm, finishedWidthMm } = size;
  const slantsMm = bottom === undefined ? 0 : ringYMm(bottom, xMm, finishedWidthMm) - bottom.yMm;
  return Math.max(0, finishedLengthMm - (bottom?.fromHemMm ?? 0) + slantsMm - headYMm(size, xMm));
}
