import { firstLengths } from "../cutting/index.ts";

/** What cuts take of stock and of new lengths. */
export interface Filled {
  /** New stock lengths to buy. */
  bought: number;
  /** Length cut from what is at hand, and how many of its pieces were cut into, mm. */
  fromStockMm: number;
  stockPiecesUsed: number;
  /** Cuts that found no place: no new length was offered, or none is long enough, mm. */
  leftMm: number[];
  /** What remains of each piece in stock, in the order given, mm. */
  stockLeftMm: number[];
}

const NEW = "new";

/** Where nothing is at hand and there is nothing to choose: no new length is offered, or one holds every cut. */
function cutFromNew(
  cutsMm: readonly number[],
  newMm: number | undefined,
  kerfMm: number,
): Filled | undefined {
  const none = { fromStockMm: 0, stockPiecesUsed: 0, stockLeftMm: [] };
  if (newMm === undefined) return { ...none, bought: 0, leftMm: cutsMm.filter((cutMm) => cutMm > 0) };
  let neededMm = -kerfMm;
  for (const cutMm of cutsMm) if (cutMm > 0) neededMm += cutMm + kerfMm;
  return neededMm <= newMm ? { ...none, bought: neededMm > -kerfMm ? 1 : 0, leftMm: [] } : undefined;
}

/** Places cuts in the pieces in stock and then in new stock lengths, as the cutting plan first does. */
export function cutFromStock({
  cutsMm,
  inStockMm,
  newMm,
  kerfMm,
}: {
  cutsMm: readonly number[];
  inStockMm: readonly number[];
  newMm: number | undefined;
  kerfMm: number;
}): Filled {
  if (inStockMm.length === 0) {
    const allNew = cutFromNew(cutsMm, newMm, kerfMm);
    if (allNew !== undefined) return allNew;
  }
  const pieces = inStockMm.flatMap((lengthMm, i) =>
    lengthMm > 0 ? [{ id: String(i), lengthMm, cost: 0, available: 1 }] : [],
  );
  const plan = firstLengths({
    cuts: cutsMm.flatMap((lengthMm, i) => (lengthMm > 0 ? [{ id: String(i), lengthMm }] : [])),
    stock: newMm === undefined ? pieces : [{ id: NEW, lengthMm: newMm, cost: newMm }, ...pieces],
    // What no length holds is bought to its own.
    toMeasureCostPerMm: 1,
    kerfMm,
    keepMm: 0,
    seed: 0,
  });
  const bars = plan?.bars ?? [];
  const fromStock = bars.filter(({ stockId }) => stockId !== NEW);
  const stockLeftMm = [...inStockMm];
  let fromStockMm = 0;
  for (const { stockId, cuts, offcutMm } of fromStock) {
    for (const { lengthMm } of cuts) fromStockMm += lengthMm;
    stockLeftMm[Number(stockId)] = offcutMm;
  }
  return {
    bought: bars.length - fromStock.length,
    fromStockMm,
    stockPiecesUsed: fromStock.length,
    leftMm: plan?.toMeasure.map(({ lengthMm }) => lengthMm) ?? [],
    stockLeftMm,
  };
}
