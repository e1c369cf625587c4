import { firstLengths } from "../cutting/index.ts";

export interface Filled {
  /** New stock lengths to buy. */
  bought: number;
  /** Length cut from what is at hand, and how many of its pieces were cut into, mm. */
  fromRackMm: number;
  rackPiecesUsed: number;
  /** Cuts that found no place: no new length was offered, or none is long enough, mm. */
  leftMm: number[];
  /** What remains of each piece of the rack, in the order given, mm. */
  rackLeftMm: number[];
}

const NEW = "new";

/** Places cuts in the pieces of the rack and then in new stock lengths, as the cutting plan first does. */
export function fillRack({
  cutsMm,
  rackMm,
  newMm,
  kerfMm,
}: {
  cutsMm: readonly number[];
  rackMm: readonly number[];
  newMm: number | undefined;
  kerfMm: number;
}): Filled {
  const stock = rackMm.flatMap((lengthMm, i) =>
    lengthMm > 0 ? [{ id: String(i), lengthMm, cost: 0, available: 1 }] : [],
  );
  const plan = firstLengths({
    cuts: cutsMm.flatMap((lengthMm, i) => (lengthMm > 0 ? [{ id: String(i), lengthMm }] : [])),
    stock: newMm === undefined ? stock : [{ id: NEW, lengthMm: newMm, cost: newMm }, ...stock],
    // What no length holds is bought to its own.
    toMeasureCostPerMm: 1,
    kerfMm,
    keepMm: 0,
    seed: 0,
  });
  const bars = plan?.bars ?? [];
  const fromRack = bars.filter(({ stockId }) => stockId !== NEW);
  const rackLeftMm = [...rackMm];
  let fromRackMm = 0;
  for (const { stockId, cuts, offcutMm } of fromRack) {
    for (const { lengthMm } of cuts) fromRackMm += lengthMm;
    rackLeftMm[Number(stockId)] = offcutMm;
  }
  return {
    bought: bars.length - fromRack.length,
    fromRackMm,
    rackPiecesUsed: fromRack.length,
    leftMm: plan?.toMeasure.map(({ lengthMm }) => lengthMm) ?? [],
    rackLeftMm,
  };
}
