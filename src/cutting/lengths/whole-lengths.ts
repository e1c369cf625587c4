import { greatestCommonDivisor } from "../../units/index.ts";
import type { LengthsProblem } from "./problem.ts";

/** A length to cut up, in cells. */
export interface WholeStock {
  size: number;
  cost: number;
  /** How many there are; infinite for what is bought. */
  available: number;
}

/** Equal cuts as one type, the longest first, and everything in whole cells: a cell is `cellMm` long. */
export interface WholeLengths {
  /** Cut and the saw line behind it, in cells. */
  sizes: readonly number[];
  demand: readonly number[];
  stock: readonly WholeStock[];
  /** Cost of one cut of each type bought to measure; absent where that cannot be. */
  toMeasure?: readonly number[];
  /** Every cost is a multiple of this; 0 where they have no common measure. */
  costStep: number;
}

const CELLS_PER_MM = 1000;
/** Binary dust of a length in cells. */
const DUST = 1e-6;

/**
 * The problem over whole micrometres, divided by what they have in common. Cuts are rounded down and stock up, by less
 * than a micrometre each: that loses no plan, so that a bound stays one, and no saw would notice.
 */
export function wholeLengths(problem: LengthsProblem): { whole: WholeLengths; typeOf: number[] } {
  const { cuts, stock, kerfMm } = problem;
  const kerf = Math.floor(kerfMm * CELLS_PER_MM + DUST);
  const cutSizes = cuts.map(({ lengthMm }) => Math.floor(lengthMm * CELLS_PER_MM + DUST) + kerf);
  const sizes = [...new Set(cutSizes)].sort((a, b) => b - a);
  const index = new Map(sizes.map((size, type) => [size, type]));
  const typeOf = cutSizes.map((size) => index.get(size) as number);
  const demand = sizes.map(() => 0);
  for (const type of typeOf) demand[type] = (demand[type] as number) + 1;
  const stockSizes = stock.map(({ lengthMm }) => Math.ceil(lengthMm * CELLS_PER_MM - DUST) + kerf);
  // Only the cuts' measure matters: a length of stock holds no more than its whole multiples of it.
  const cell = sizes.reduce((a, b) => greatestCommonDivisor(a, b), 0) || 1;
  const perMm = problem.toMeasureCostPerMm;
  const toMeasure = perMm === undefined ? undefined : sizes.map(() => 0);
  if (perMm !== undefined && toMeasure) {
    typeOf.forEach((type, i) => {
      toMeasure[type] = (cuts[i]?.lengthMm ?? 0) * perMm;
    });
  }
  return {
    typeOf,
    whole: {
      sizes: sizes.map((size) => size / cell),
      demand,
      stock: stockSizes.map((size, s) => ({
        size: Math.floor(size / cell),
        cost: stock[s]?.cost ?? 0,
        available: stock[s]?.available ?? Number.POSITIVE_INFINITY,
      })),
      ...(toMeasure === undefined ? {} : { toMeasure }),
      costStep: toMeasure === undefined ? costStepOf(stock.map(({ cost }) => cost)) : 0,
    },
  };
}

/** Costs are often whole numbers, cents, or lengths in tenths. */
const COST_PARTS = [1, 100, 1000];

function costStepOf(costs: readonly number[]): number {
  for (const parts of COST_PARTS) {
    const whole = costs.map((cost) => Math.round(cost * parts));
    if (whole.every((part, i) => Math.abs(part - (costs[i] ?? 0) * parts) <= DUST)) {
      return whole.reduce((a, b) => greatestCommonDivisor(a, b), 0) / parts;
    }
  }
  return 0;
}

/** A bound raised to the next amount that a plan can cost, both in the weights of the search; a step of 0 raises nothing. */
export function boundRaisedToStep(cost: number, costStep: number): number {
  return costStep > 0 ? Math.ceil(cost / costStep - DUST) * costStep : cost;
}
