import { clearPatch, type PatchOperation, setPatch } from "../../figures/index.ts";
import type { CutCloth, Job, Stock, StockPiece } from "../../job/index.ts";
import { asCut, asCutPiece, lotOf, withCuts } from "./cuts-made.ts";
import type { CuttingPlan } from "./cutting-plan.ts";
import { withOwnIds } from "./own-ids.ts";
import { type BoughtMm, stockAfter } from "./stock-after.ts";

export interface AllCut {
  boughtMm: BoughtMm;
  /** Whether a piece of the job is one of the shop's: what is left of it keeps its id there. */
  isOfShop: (piece: StockPiece) => boolean;
  /** Whether other jobs have a part of the same piece: what is left of it stays there, however short. */
  isShared: (piece: StockPiece) => boolean;
  /** An id that no piece in any shop has. */
  newId: () => string;
}

/**
 * What a job takes in once everything is cut as planned: its pieces are cut, and what is left, with the lots of the
 * bolts, lies in the shop for other jobs. Cloth that no plan was found for stays with the job. Lengths of bars, boards
 * and cord stay listed as they were cut; what is left of them lies in the shop, too.
 */
export function allCutPatch(
  job: Job,
  cutting: CuttingPlan,
  { boughtMm, isOfShop, isShared, newId }: AllCut,
): PatchOperation[] {
  const stock = withOwnIds(job.stock);
  const after = stockAfter(job, cutting, boughtMm);
  const unplanned = new Set(cutting.cloths.flatMap((one) => ("bolts" in one.answer ? [] : one.clothId)));
  const isLeft = ({ cloth }: { cloth: string }) => !unplanned.has(cloth);
  const known = new Map([...(stock.cloth ?? []), ...(stock.lengths ?? [])].map((piece) => [piece.id, piece]));
  const asOwn = <T extends StockPiece>(piece: T): T => {
    const before = known.get(piece.id);
    return before !== undefined && isOfShop(before) ? piece : { ...piece, id: newId() };
  };
  const leftOver: Stock = {
    cloth: [...(job.leftOver?.cloth ?? []), ...(after.cloth ?? []).filter(isLeft).map(asOwn)],
    lengths: job.leftOver?.lengths ?? (after.lengths ?? []).map(asOwn),
  };
  const cutCloth = cutsOf(job, cutting, { stock, after, boughtMm, isShared });
  const cut = new Set(cutCloth.flatMap(({ pieces }) => pieces.map(({ piece }) => piece)));
  const laid = (job.laidPieces ?? []).filter(({ piece }) => !cut.has(piece));
  return [
    ...setPatch(job, "/leftOver", leftOver),
    ...(cutCloth.length === 0 ? [] : setPatch(job, "/cutCloth", cutCloth)),
    ...(stock.cloth === undefined
      ? []
      : setPatch(
          job,
          "/stock/cloth",
          stock.cloth.filter((piece) => !isLeft(piece)),
        )),
    ...(job.laidPieces === undefined
      ? []
      : laid.length === 0
        ? clearPatch(job, "/laidPieces")
        : setPatch(job, "/laidPieces", laid)),
  ];
}

/** Every piece that is cut, and how much of each bolt went into it. */
function cutsOf(
  job: Job,
  cutting: CuttingPlan,
  {
    stock,
    after,
    boughtMm,
    isShared,
  }: { stock: Stock; after: Stock } & Pick<AllCut, "boughtMm" | "isShared">,
): CutCloth[] {
  let cuts: CutCloth[] = [...(job.cutCloth ?? [])];
  for (const cloth of cutting.cloths) {
    if (!("bolts" in cloth.answer)) continue;
    for (const bolt of cloth.answer.bolts) {
      const isThis = (one: { id: string; cloth: string }) =>
        one.id === bolt.boltId && one.cloth === cloth.clothId;
      const from = (stock.cloth ?? []).find(isThis);
      const lot = lotOf(cloth, bolt, from, (name) => name);
      const rest = (after.cloth ?? []).find(isThis);
      // Of what is left too short to keep, all is gone.
      const isGone = from !== undefined && rest === undefined && !isShared(from);
      const cutMm = isGone ? from.lengthMm : bolt.usedMm;
      cuts = withCuts(cuts, {
        clothId: cloth.clothId,
        boughtMm: from === undefined ? Math.max(bolt.usedMm, boughtMm(cloth.clothId) ?? 0) : 0,
        pieces: bolt.placements.map((placed) => ({ ...asCutPiece(placed), lot })),
        off: from && { bolt: from.id, cutMm: asCut(cutMm) },
      });
    }
  }
  return cuts;
}
