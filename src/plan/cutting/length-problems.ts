import {
  hardwareNeeds,
  type LengthsNeed,
  labelOf,
  type NeedsInput,
  type RunningNeed,
  soldLengths,
  withTypedPrice,
} from "../../cost/index.ts";
import type { LengthCut, StockLength } from "../../cutting/index.ts";
import type { ResolvedCutting, Stock } from "../../job/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";
import type { LengthsCutting } from "./cutting-plan.ts";

/** What the parts of one shade follow from, and the name of its window. */
export type ShadeParts = NeedsInput & { windowName: string };

type CutNeed = LengthsNeed | RunningNeed;
export type LengthsTask = Omit<LengthsCutting, "answer">;

const NEW = "new";

/** Every bar, rib, board, tube and cord that the shades take, each as one problem over all of them. */
export function lengthTasks(
  inputs: Iterable<ShadeParts>,
  stock: Stock,
  cutting: ResolvedCutting,
  prices: Readonly<Record<string, number>> = {},
): LengthsTask[] {
  const byId = new Map<string, { need: CutNeed; cuts: LengthCut[] }>();
  for (const input of inputs) {
    for (const listed of hardwareNeeds(input)) {
      const need = withTypedPrice(listed, prices);
      if (need.sort !== "lengths" && !(need.sort === "running" && need.group === "cord")) continue;
      const task = byId.get(need.id) ?? { need, cuts: [] };
      byId.set(need.id, task);
      need.cutsMm.forEach((lengthMm, n) => {
        if (lengthMm <= 0) return;
        task.cuts.push({
          id: `${input.shade.shadeId}/${need.id}-${n + 1}`,
          lengthMm,
          shade: input.windowName,
          part:
            need.cutsMm.length === 1 ? labelOf(need) : `${labelOf(need)} ${n + 1} of ${need.cutsMm.length}`,
        });
      });
    }
  }
  return [...byId.values()]
    .filter(({ cuts }) => cuts.length > 0)
    .map(({ need, cuts }) => taskOf(need, cuts, stock, cutting));
}

function taskOf(
  need: CutNeed,
  cuts: readonly LengthCut[],
  stock: Stock,
  cutting: ResolvedCutting,
): LengthsTask {
  const held = (stock.lengths ?? []).filter(({ part }) => part === need.stockId);
  const atHand = held.map(({ id, lengthMm }): StockLength => ({ id, lengthMm, cost: 0, available: 1 }));
  const sold = need.sort === "lengths" ? newStock(need, new Set(held.map(({ id }) => id))) : [];
  const longestMm = [...atHand, ...sold].reduce((most, { lengthMm }) => Math.max(most, lengthMm), 0);
  const soldMm = sold.reduce((most, { lengthMm }) => Math.max(most, lengthMm), 0);
  const isSold = sold.length > 0;
  const fits = ({ lengthMm }: LengthCut) => !isSold || lengthMm <= longestMm + SAME_LENGTH_MM;
  const fitting = cuts.filter(fits);
  const noun = need.sort === "lengths" ? need.noun : "piece";
  // A cut that only stock at hand is long enough for is bought to measure where that does not reach.
  const atHandAlone = fitting.some(({ lengthMm }) => lengthMm > soldMm + SAME_LENGTH_MM);
  const perMm = isSold ? 2 * dearestPerMm(sold) : 1;
  return {
    id: need.id,
    partId: need.stockId,
    name: labelOf(need),
    noun,
    newStockIds: sold.map(({ id }) => id),
    stockNames: Object.fromEntries([
      ...held.map(({ id }, n) => [id, `Length ${n + 1} in stock`]),
      ...sold.map(({ id }) => [id, `New ${noun}`]),
    ]),
    stockPrices: need.sort === "lengths" ? pricesOf(need, sold) : {},
    tooLong: cuts.filter((cut) => !fits(cut)),
    problem: {
      cuts: fitting,
      stock: [...sold, ...atHand],
      ...(!isSold || atHandAlone ? { toMeasureCostPerMm: perMm } : {}),
      kerfMm: need.sort === "lengths" && need.kerfMm > 0 ? cutting.sawKerfMm : 0,
      keepMm: cutting.keepLengthMm,
      seed: cutting.seed,
    },
  };
}

/** Every length that can be bought, at its price; by its length where one of them has none. */
function newStock(need: LengthsNeed, taken: ReadonlySet<string>): StockLength[] {
  const lengths = soldLengths(need);
  const priced = lengths.every(({ price }) => price !== undefined && price > 0);
  return lengths.map(({ lengthMm, price }, n) => {
    let id = n === 0 ? NEW : `${NEW}-${n + 1}`;
    while (taken.has(id)) id += "-length";
    return { id, lengthMm, cost: priced ? (price ?? 0) : lengthMm };
  });
}

function pricesOf(need: LengthsNeed, sold: readonly StockLength[]): Record<string, number> {
  const prices = soldLengths(need).map(({ price }) => price);
  return Object.fromEntries(
    sold.flatMap(({ id }, n) => {
      const price = prices[n];
      return price === undefined ? [] : [[id, price] as const];
    }),
  );
}

function dearestPerMm(sold: readonly StockLength[]): number {
  return sold.reduce((most, { cost, lengthMm }) => Math.max(most, cost / lengthMm), 0);
}
