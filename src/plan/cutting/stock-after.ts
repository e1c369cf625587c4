import type { BoltPlan, CutBar } from "../../cutting/index.ts";
import { type Job, resolveCutting, type Stock } from "../../job/index.ts";
import { type ClothInStock, restOf, sheetInStock, tenth } from "./cloth-left.ts";
import { lotOf } from "./cuts-made.ts";
import type { ClothCutting, CuttingPlan, LengthsCutting } from "./cutting-plan.ts";
import { freshNames, withOwnIds } from "./own-ids.ts";

type LengthInStock = NonNullable<Stock["lengths"]>[number];

/** How much of a cloth that has no length yet is bought for the job, mm; undefined: as much as its plan takes. */
export type BoughtMm = (clothId: string) => number | undefined;

/**
 * The stock once everything is cut as planned: what was used is shorter or gone, what is worth keeping is there by name
 * and of the lot of its bolt, new cloth that was bought and not taken as well.
 */
export function stockAfter(job: Job, cutting: CuttingPlan, boughtMm: BoughtMm = () => undefined): Stock {
  const stock = withOwnIds(job.stock);
  const { freshId, freshName } = freshNames(stock);
  return {
    ...stock,
    cloth: clothAfter(stock, resolveCutting(job.cutting).keepClothLengthMm, cutting.cloths, {
      freshId,
      freshName,
      boughtMm,
    }),
    lengths: lengthsAfter(stock, cutting.lengths, freshId),
  };
}

interface ClothKept {
  freshId: (wish: string) => string;
  freshName: (wish: string) => string;
  boughtMm: BoughtMm;
}

function clothAfter(
  stock: Stock,
  keepMm: number,
  cloths: readonly ClothCutting[],
  { freshId, freshName, boughtMm }: ClothKept,
): ClothInStock[] {
  const used = new Map<string, { cloth: ClothCutting; bolt: BoltPlan }>();
  for (const cloth of cloths) {
    if (!("bolts" in cloth.answer)) continue;
    for (const bolt of cloth.answer.bolts) used.set(`${cloth.clothId} ${bolt.boltId}`, { cloth, bolt });
  }
  const held = (stock.cloth ?? []).flatMap((piece) => {
    const cut = used.get(`${piece.cloth} ${piece.id}`);
    if (cut === undefined) return [piece];
    const lengthMm = piece.lengthMm - cut.bolt.usedMm;
    if (lengthMm < keepMm) return [];
    return [{ ...restOf(piece, cut.bolt.usedMm, cut.cloth), lot: lotOf(cut.cloth, cut.bolt, piece, asIs) }];
  });
  const kept = [...used.values()].flatMap(({ cloth, bolt }) => {
    const from = (stock.cloth ?? []).find(({ id, cloth: of }) => id === bolt.boltId && of === cloth.clothId);
    const lot = lotOf(cloth, bolt, from, from === undefined ? freshName : asIs);
    const remnants = bolt.remnants.map(
      (remnant, n): ClothInStock =>
        sheetInStock(cloth, { boltId: bolt.boltId, from }, remnant, {
          id: freshId(`${cloth.clothId}-${bolt.boltId}-${n + 1}`),
          name: freshName(remnant.name),
          widthMm: tenth(remnant.widthMm),
          lengthMm: tenth(remnant.lengthMm),
          lot,
        }),
    );
    const endMm = from === undefined ? (boughtMm(cloth.clothId) ?? 0) - bolt.usedMm : 0;
    if (endMm < keepMm) return remnants;
    // Of full width, as bolts are, so that several jobs can share it.
    const end = sheetInStock(
      cloth,
      { boltId: bolt.boltId, from },
      { xMm: 0, yMm: bolt.usedMm, widthMm: Infinity, lengthMm: endMm },
      {
        id: freshId(`${cloth.clothId}-${bolt.boltId}-left`),
        name: freshName(`${cloth.clothName}, left on the bolt`),
        lengthMm: tenth(endMm),
        lot,
      },
    );
    return [end, ...remnants];
  });
  return [...held, ...kept];
}

const asIs = (name: string): string => name;

function lengthsAfter(
  stock: Stock,
  lengths: readonly LengthsCutting[],
  freshId: (wish: string) => string,
): LengthInStock[] {
  const bars = lengths.flatMap((one) =>
    one.answer.kind === "infeasible" ? [] : one.answer.plan.bars.map((bar) => ({ one, bar })),
  );
  const cut = new Map(
    bars
      .filter(({ one, bar }) => !one.newStockIds.includes(bar.stockId))
      .map(({ bar }) => [bar.stockId, bar]),
  );
  const held = (stock.lengths ?? []).flatMap((piece) => offcutOf(piece, cut.get(piece.id)));
  const kept = bars.flatMap(({ one, bar }): LengthInStock[] =>
    bar.kept && one.newStockIds.includes(bar.stockId)
      ? [{ id: freshId(`${one.partId}-offcut`), part: one.partId, lengthMm: tenth(bar.offcutMm) }]
      : [],
  );
  return [...held, ...kept];
}

function offcutOf(piece: LengthInStock, bar: CutBar | undefined): LengthInStock[] {
  if (bar === undefined) return [piece];
  return bar.kept ? [{ ...piece, lengthMm: tenth(bar.offcutMm) }] : [];
}
