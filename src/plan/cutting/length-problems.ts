import { type CostInput, hardwareNeeds, type LengthsNeed, type RunningNeed } from "../../cost/index.ts";
import type { LengthCut, LengthsProblem, StockLength } from "../../cutting/index.ts";
import type { SettledCutting, Stock } from "../../job/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";
import type { LengthsCutting } from "./cutting-plan.ts";

type CutNeed = LengthsNeed | RunningNeed;
export type LengthsTask = Omit<LengthsCutting, "answer">;

const NEW = "new";

/** Every bar, rib, board, tube and cord that the shades take, each as one problem over all of them. */
export function lengthTasks(
  inputs: readonly CostInput[],
  stock: Stock,
  cutting: SettledCutting,
): LengthsTask[] {
  const byId = new Map<string, { need: CutNeed; cuts: LengthCut[] }>();
  for (const input of inputs) {
    for (const need of hardwareNeeds(input)) {
      if (need.sort !== "lengths" && !(need.sort === "running" && need.group === "cord")) continue;
      const task = byId.get(need.id) ?? { need, cuts: [] };
      byId.set(need.id, task);
      need.cutsMm.forEach((lengthMm, n) => {
        if (lengthMm <= 0) return;
        task.cuts.push({
          id: `${input.brief.shadeId}/${need.id}-${n + 1}`,
          lengthMm,
          shade: input.brief.windowName,
          part: need.cutsMm.length === 1 ? need.label : `${need.label} ${n + 1} of ${need.cutsMm.length}`,
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
  cutting: SettledCutting,
): LengthsTask {
  const held = (stock.lengths ?? []).filter(({ part }) => part === need.stockId);
  let newStockId = NEW;
  while (held.some(({ id }) => id === newStockId)) newStockId += "-length";
  const rack = held.map(({ id, lengthMm }): StockLength => ({ id, lengthMm, cost: 0, available: 1 }));
  const stockNames = Object.fromEntries(held.map(({ id }) => [id, id]));
  const isSold = need.sort === "lengths" && need.stockMm !== undefined;
  const longestMm = [...rack.map(({ lengthMm }) => lengthMm), isSold ? (need.stockMm ?? 0) : 0].reduce(
    (most, one) => Math.max(most, one),
    0,
  );
  const fits = ({ lengthMm }: LengthCut) => !isSold || lengthMm <= longestMm + SAME_LENGTH_MM;
  const common = {
    id: need.id,
    partId: need.stockId,
    name: need.label,
    noun: need.sort === "lengths" ? need.noun : "piece",
    tooLong: cuts.filter((cut) => !fits(cut)),
  };
  const problem: LengthsProblem = {
    cuts: cuts.filter(fits),
    stock: rack,
    kerfMm: need.sort === "lengths" && need.kerfMm > 0 ? cutting.sawKerfMm : 0,
    keepMm: cutting.keepLengthMm,
    seed: cutting.seed,
  };
  if (!isSold) return { ...common, stockNames, problem: { ...problem, toMeasureCostPerMm: 1 } };
  const stockMm = need.stockMm ?? 0;
  const sold: StockLength = { id: newStockId, lengthMm: stockMm, cost: stockMm };
  return {
    ...common,
    newStockId,
    stockNames: { ...stockNames, [newStockId]: `New ${need.noun}` },
    problem: {
      ...problem,
      stock: [sold, ...rack],
      ...(rackAlone(problem, stockMm) ? { toMeasureCostPerMm: 2 } : {}),
    },
  };
}

/** A cut that only the rack is long enough for must be bought to measure where the rack does not reach. */
function rackAlone({ cuts }: LengthsProblem, stockMm: number): boolean {
  return cuts.some(({ lengthMm }) => lengthMm > stockMm + SAME_LENGTH_MM);
}
