import { readFileSync } from "node:fs";
import type { LengthsProblem } from "../../src/cutting/index.ts";

/** A published instance of one-dimensional cutting stock, with where it was read and under which licence. */
export interface StockInstance {
  id: string;
  stockLength: number;
  items: [length: number, demand: number][];
  bestKnownBars: number;
  source: string;
  licence: string;
  reference: string;
}

export const STOCK_INSTANCES: StockInstance[] = JSON.parse(
  readFileSync("test/cutting/stock-1d.json", "utf8"),
).instances;

export function stockInstance(id: string): StockInstance {
  const found = STOCK_INSTANCES.find((one) => one.id === id);
  if (found === undefined) throw new Error(`invalid instance: ${id}`);
  return found;
}

/** One bar costs 1, no saw line, so that the cost is the number of bars. */
export function lengthsProblem({ items, stockLength }: StockInstance): LengthsProblem {
  return {
    cuts: items.flatMap(([lengthMm, demand], i) =>
      Array.from({ length: demand }, (_, n) => ({ id: `${i}-${n}`, lengthMm })),
    ),
    stock: [{ id: "bar", lengthMm: stockLength, cost: 1 }],
    kerfMm: 0,
    keepMm: stockLength,
    seed: 1,
  };
}
