import type { Placement } from "../../cutting/index.ts";
import { clearPatch, type PatchOperation, setPatch } from "../../figures/index.ts";
import type { Job, LaidPiece } from "../../job/index.ts";
import type { ClothCutting } from "./cutting-plan.ts";

/** The job with pieces kept where somebody laid them; those of them that were laid before lie there no more. */
export function heldPatch(
  job: Job,
  { clothId, newBoltId }: ClothCutting,
  laid: readonly { boltId: string; placement: Placement }[],
): PatchOperation[] {
  const pieces = laid.map(({ boltId, placement: { pieceId, xMm, yMm, turn } }): LaidPiece => {
    const bolt = boltId === newBoltId ? {} : { bolt: boltId };
    return { cloth: clothId, ...bolt, piece: pieceId, xMm: Math.max(0, xMm), yMm: Math.max(0, yMm), turn };
  });
  const isMoved = new Set(pieces.map(({ piece }) => piece));
  const others = (job.laidPieces ?? []).filter(
    ({ cloth, piece }) => cloth !== clothId || !isMoved.has(piece),
  );
  return setPatch(job, "/laidPieces", [...others, ...pieces]);
}

/** The job with a piece laid by the cutting plan again; without one, all of a cloth. */
export function letGoPatch(job: Job, clothId: string, pieceId?: string): PatchOperation[] {
  const kept = (job.laidPieces ?? []).filter(
    ({ cloth, piece }) => cloth !== clothId || (pieceId !== undefined && piece !== pieceId),
  );
  return kept.length === 0 ? clearPatch(job, "/laidPieces") : setPatch(job, "/laidPieces", kept);
}

/** The nearest place to a wish where a piece lies right in the repeat of its cloth; the wish itself on plain cloth. */
export function snappedToRepeat({ problem }: ClothCutting, boltId: string, wish: Placement): Placement {
  const { repeat, bolts, pieces } = problem;
  const start = pieces.find(({ id }) => id === wish.pieceId)?.start;
  const bolt = bolts.find(({ id }) => id === boltId);
  if (repeat === undefined || start === undefined || bolt === undefined) return wish;
  const { rowMm = 0, columnMm = 0 } = bolt;
  let { xMm, yMm } = wish;
  let dropMm = 0;
  if (start.acrossMm !== undefined && repeat.acrossMm !== undefined) {
    const fromMm = columnMm + start.acrossMm;
    const column = nearest(xMm - fromMm, repeat.acrossMm, -fromMm, bolt.widthMm - wish.widthMm - fromMm);
    xMm = fromMm + column * repeat.acrossMm;
    if (repeat.match === "half-drop" && column % 2 !== 0) dropMm = repeat.alongMm / 2;
  }
  if (start.alongMm !== undefined) {
    const fromMm = rowMm + start.alongMm + dropMm;
    const mostMm = (bolt.lengthMm ?? Number.POSITIVE_INFINITY) - wish.lengthMm - fromMm;
    yMm = fromMm + nearest(yMm - fromMm, repeat.alongMm, -fromMm, mostMm) * repeat.alongMm;
  }
  return { ...wish, xMm, yMm };
}

/** The multiple of a step nearest to a length, within limits where one lies within. */
function nearest(mm: number, stepMm: number, leastMm: number, mostMm: number): number {
  const least = Math.ceil(leastMm / stepMm - 1e-9);
  const most = Math.floor(mostMm / stepMm + 1e-9);
  return Math.max(least, Math.min(Math.max(most, least), Math.round(mm / stepMm)));
}
