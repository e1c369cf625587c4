import { isProved } from "../is-proved.ts";

/** One piece to saw or cut off, mm. */
export interface LengthCut {
  id: string;
  lengthMm: number;
  /** The shade it belongs to and what it becomes there: for labels. */
  shade?: string;
  part?: string;
}

/** A length that can be cut up: one that is sold, or pieces in stock. */
export interface StockLength {
  id: string;
  lengthMm: number;
  /** What taking one costs, in whatever is to be kept low: money, or 0 for what is at hand. */
  cost: number;
  /** How many there are; without it as many as one likes can be bought. */
  available?: number;
}

/** Which cuts come off which length: cutting stock in one dimension. */
export interface LengthsProblem {
  cuts: readonly LengthCut[];
  stock: readonly StockLength[];
  /** Where a cut can also be bought to its own length, as cord off a reel: what one millimetre costs. */
  toMeasureCostPerMm?: number;
  /** Width of the saw line, mm; a line lies between neighbours, and before an offcut. */
  kerfMm: number;
  /** An offcut at least so long goes back into stock, mm. */
  keepMm: number;
  seed: number;
}

export interface PlacedCut extends LengthCut {
  /** From the end of the length where cutting begins, mm. */
  fromMm: number;
}

/** One length and what is cut from it, in the order of the cuts. */
export interface CutBar {
  stockId: string;
  stockMm: number;
  cuts: PlacedCut[];
  /** What remains behind the last saw line, mm. */
  offcutMm: number;
  /** The offcut is long enough to keep. */
  kept: boolean;
}

export interface LengthsPlan {
  bars: CutBar[];
  /** Cuts bought to their own length. */
  toMeasure: LengthCut[];
  cost: number;
}

/** No plan costs less, and by which argument. */
export interface LengthsBound {
  cost: number;
  by: "material" | "patterns" | "every-placing" | "arc-flow";
}

/** What a search came to. `gap` is a share of the bound's distance: (cost − bound) / cost. */
export type LengthsAnswer =
  | { kind: "optimal"; plan: LengthsPlan; bound: LengthsBound }
  | { kind: "feasible" | "stopped"; plan: LengthsPlan; bound: LengthsBound; gap: number }
  | { kind: "infeasible"; reason: { kind: "longer-than-stock"; cutIds: string[]; longestStockMm: number } };

export function answerOf(
  plan: LengthsPlan,
  bound: LengthsBound,
  otherwise: "feasible" | "stopped",
): LengthsAnswer {
  if (isProved(plan.cost, bound.cost)) return { kind: "optimal", plan, bound };
  return { kind: otherwise, plan, bound, gap: (plan.cost - bound.cost) / plan.cost };
}
