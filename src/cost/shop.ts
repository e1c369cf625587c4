import type { ShoppingLine } from "../shade-plan/index.ts";
import { lengthFor } from "./length-for.ts";
import { toCent } from "./money.ts";
import type { CountedNeed, LengthsNeed, Need, RunningNeed, SpooledNeed } from "./need.ts";
import { inUnit, raisedToStep, UNIT_MM } from "./sold.ts";
import type { StockAtHand } from "./stock-at-hand.ts";

type LineFigures = Pick<ShoppingLine, "quantity" | "unit" | "onHand" | "price" | "cost">;

/** Cloth and cord: what the cuts take, what stock gives, what is bought, mm. */
export interface BoughtRunning extends LineFigures {
  need: RunningNeed;
  neededMm: number;
  fromStockMm: number;
  boughtMm: number;
}

/** Lengths of `stockMm` bought; `overlong` of them are cuts to their own size. */
export interface BoughtLengths extends LineFigures {
  need: LengthsNeed;
  neededMm: number;
  stockMm: number | undefined;
  overlong: number;
}

/** Pieces or packs. */
export interface BoughtCounted extends LineFigures {
  need: CountedNeed;
}

/** Whole reels. */
export interface BoughtSpools extends LineFigures {
  need: SpooledNeed;
}

/** One line of a shopping list in numbers; `shoppingLineOf` puts it into words. */
export type Bought = BoughtRunning | BoughtLengths | BoughtCounted | BoughtSpools;

/**
 * What to buy for one need after stock was looked through. Takes from stock what it uses.
 * `wasteShare`: extra on plain cloth for mistakes, share of one.
 * `atMost` is a number of stock lengths known to be enough: first-fit decreasing over all shades can,
 * rarely, come out worse than each shade by itself.
 */
export function shop(
  need: Need,
  stock: StockAtHand,
  wasteShare: number,
  atMost = Number.POSITIVE_INFINITY,
): Bought {
  switch (need.sort) {
    case "running":
      return shopRunning(need, stock, wasteShare);
    case "lengths":
      return shopLengths(need, stock, atMost);
    case "counted":
      return shopCounted(need);
    case "spooled":
      return shopSpooled(need);
  }
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

function priced(quantity: number, price: number | undefined): Pick<ShoppingLine, "price" | "cost"> {
  return price === undefined ? {} : { price, cost: toCent(quantity * price) };
}

function shopRunning(need: RunningNeed, stock: StockAtHand, wasteShare: number): BoughtRunning {
  const { unit } = need;
  const { fromStockMm, leftMm } = stock.fill(need.stockId, need.cutsMm, undefined, 0, need.widthMm);
  const extra = need.plain === true ? 1 + wasteShare : 1;
  const boughtMm = raisedToStep(sum(leftMm) * extra, need.stepMm);
  const pricePerUnit = need.price === undefined ? undefined : (need.price * UNIT_MM[unit]) / 1000;
  return {
    need,
    neededMm: sum(need.cutsMm),
    fromStockMm,
    boughtMm,
    quantity: inUnit(boughtMm, unit),
    unit,
    ...(fromStockMm > 0 ? { onHand: inUnit(fromStockMm, unit) } : {}),
    ...priced(boughtMm / UNIT_MM[unit], pricePerUnit),
  };
}

function shopLengths(need: LengthsNeed, stock: StockAtHand, atMost: number): BoughtLengths {
  const sold = lengthFor(need);
  const stockMm = sold?.lengthMm;
  const filled = stock.fill(need.stockId, need.cutsMm, stockMm, need.kerfMm);
  const overlong = filled.leftMm.length;
  const quantity = Math.min(filled.bought + overlong, atMost);
  return {
    need,
    neededMm: sum(need.cutsMm),
    stockMm,
    overlong,
    quantity,
    unit: "length",
    ...(filled.stockPiecesUsed > 0 ? { onHand: filled.stockPiecesUsed } : {}),
    // A piece longer than any that is sold has no price that we know.
    ...(overlong > 0 && stockMm !== undefined
      ? {}
      : priced(quantity, sold === undefined ? need.price : sold.price)),
  };
}

function shopCounted(need: CountedNeed): BoughtCounted {
  const packs = Math.ceil(need.pieces / need.packOf);
  const unit = need.packNoun === undefined ? "piece" : "pack";
  return { need, quantity: packs, unit, ...priced(packs, need.price) };
}

function shopSpooled(need: SpooledNeed): BoughtSpools {
  const spools = Math.ceil(need.lengthMm / need.spoolMm);
  return { need, quantity: spools, unit: "piece", ...priced(spools, need.price) };
}
