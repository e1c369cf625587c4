import type { BoltPlan, CutBar } from "../../cutting/index.ts";
import { type Job, resolveCutting, type Stock } from "../../job/index.ts";
import { type ClothInStock, restOf, sheetInStock, tenth } from "./cloth-left.ts";
import type { ClothCutting, CuttingPlan, LengthsCutting } from "./cutting-plan.ts";
import { freshNames, withOwnIds } from "./own-ids.ts";

type LengthInStock = NonNullable<Stock["lengths"]>[number];

/** The stock once everything is cut as planned: what was used is shorter or gone, what is worth keeping is there by name. */
export function stockAfter(job: Job, cutting: CuttingPlan): Stock {
  const stock = withOwnIds(job.stock);
  const { freshId, freshName } = freshNames(stock);
  return {
    ...stock,
    cloth: clothAfter(stock, resolveCutting(job.cutting).keepClothLengthMm, cutting.cloths, {
      freshId,
      freshName,
    }),
    lengths: lengthsAfter(stock, cutting.lengths, freshId),
  };
}

function clothAfter(
  stock: Stock,
  keepMm: number,
  cloths: readonly ClothCutting[],
  { freshId, freshName }: Record<"freshId" | "freshName", (wish: string) => string>,
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
    return lengthMm < keepMm ? [] : [restOf(piece, cut.bolt.usedMm, cut.cloth)];
  });
  const kept = [...used.values()].flatMap(({ cloth, bolt }) => {
    const from = (stock.cloth ?? []).find(({ id }) => id === bolt.boltId);
    return bolt.remnants.map(
      (remnant, n): ClothInStock =>
        sheetInStock(cloth, { boltId: bolt.boltId, from }, remnant, {
          id: freshId(`${cloth.clothId}-${bolt.boltId}-${n + 1}`),
          name: freshName(remnant.name),
          widthMm: tenth(remnant.widthMm),
          lengthMm: tenth(remnant.lengthMm),
          ...(from?.lot === undefined ? {} : { lot: from.lot }),
        }),
    );
  });
  return [...held, ...kept];
}

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
