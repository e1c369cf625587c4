import type { ShoppingLine } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import { lengthFor } from "./length-for.ts";
import { longestMm } from "./longest.ts";
import { toCent } from "./money.ts";
import type { CountedNeed, LengthsNeed, Need, RunningNeed, SpooledNeed } from "./need.ts";
import {
  boughtLengthText,
  countText,
  cutUnit,
  inUnit,
  needLengthText,
  raisedToStep,
  UNIT_MM,
} from "./sold.ts";
import type { StockAtHand } from "./stock-at-hand.ts";

export interface ShopTerms {
  units: UnitChoice;
  /** Extra on plain cloth for mistakes, share of one. */
  wasteShare: number;
}

/** A shopping line and what the finding about short stock needs to know. */
export interface Shopped {
  line: ShoppingLine;
  /** Cloth and cord: what the cuts take, what stock gives, what is bought, mm. */
  lengths?: { neededMm: number; fromStockMm: number; boughtMm: number };
}

/**
 * What to buy for one need after stock was looked through. Takes from stock what it uses.
 * `atMost` is a number of stock lengths known to be enough: first-fit decreasing over all shades can,
 * rarely, come out worse than each shade by itself.
 */
export function shop(
  need: Need,
  stock: StockAtHand,
  terms: ShopTerms,
  atMost = Number.POSITIVE_INFINITY,
): Shopped {
  switch (need.sort) {
    case "running":
      return shopRunning(need, stock, terms);
    case "lengths":
      return { line: shopLengths(need, stock, terms.units, atMost) };
    case "counted":
      return { line: shopCounted(need) };
    case "spooled":
      return { line: shopSpooled(need, terms.units) };
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

function shopRunning(need: RunningNeed, stock: StockAtHand, { units, wasteShare }: ShopTerms): Shopped {
  const { id, group, label, unit } = need;
  const filled = stock.fill(need.stockId, need.cutsMm, undefined, 0, need.widthMm);
  const neededMm = sum(need.cutsMm);
  const extra = need.plain === true ? 1 + wasteShare : 1;
  const boughtMm = raisedToStep(sum(filled.leftMm) * extra, need.stepMm);
  const pricePerUnit = need.price === undefined ? undefined : (need.price * UNIT_MM[unit]) / 1000;
  return {
    line: {
      id,
      group,
      label,
      needText: needLengthText(neededMm, unit, units),
      buyText: boughtMm === 0 ? "none: at hand" : boughtLengthText(boughtMm, unit, units),
      quantity: inUnit(boughtMm, unit),
      unit,
      ...(filled.fromStockMm > 0 ? { onHand: inUnit(filled.fromStockMm, unit) } : {}),
      ...priced(boughtMm / UNIT_MM[unit], pricePerUnit),
    },
    lengths: { neededMm, fromStockMm: filled.fromStockMm, boughtMm },
  };
}

function shopLengths(need: LengthsNeed, stock: StockAtHand, units: UnitChoice, atMost: number): ShoppingLine {
  const { id, group, label, noun } = need;
  const sold = lengthFor(need);
  const stockMm = sold?.lengthMm;
  const filled = stock.fill(need.stockId, need.cutsMm, stockMm, need.kerfMm);
  const overlong = filled.leftMm.length;
  const quantity = Math.min(filled.bought + overlong, atMost);
  const whole = quantity - overlong;
  const longest = longestMm(need.cutsMm);
  const lengthWords = stockMm === undefined ? "" : ` of ${boughtLengthText(stockMm, cutUnit(units), units)}`;
  const words: string[] = [];
  if (whole > 0) words.push(`${countText(whole, noun)}${lengthWords}`);
  if (overlong > 0)
    words.push(`${overlong} cut to size, the longest ${needLengthText(longest, cutUnit(units), units)}`);
  return {
    id,
    group,
    label,
    needText: `${countText(need.cutsMm.length, "piece")}, ${needLengthText(sum(need.cutsMm), cutUnit(units), units)} in all`,
    buyText: words.length === 0 ? "none: at hand" : words.join(" and "),
    quantity,
    unit: "length",
    ...(filled.stockPiecesUsed > 0 ? { onHand: filled.stockPiecesUsed } : {}),
    // A piece longer than any that is sold has no price that we know.
    ...(overlong > 0 && stockMm !== undefined
      ? {}
      : priced(quantity, sold === undefined ? need.price : sold.price)),
  };
}

function shopCounted({ id, group, label, pieces, packOf, packNoun, price }: CountedNeed): ShoppingLine {
  const packs = Math.ceil(pieces / packOf);
  return {
    id,
    group,
    label,
    needText: String(pieces),
    buyText:
      packNoun === undefined ? String(packs) : `${countText(packs, packNoun, manyOf(packNoun))} of ${packOf}`,
    quantity: packs,
    unit: packNoun === undefined ? "piece" : "pack",
    ...priced(packs, price),
  };
}

function manyOf(noun: string): string {
  return noun.endsWith("x") ? `${noun}es` : `${noun}s`;
}

function shopSpooled(
  { id, group, label, lengthMm, spoolMm, price }: SpooledNeed,
  units: UnitChoice,
): ShoppingLine {
  const unit = units.system === "imperial" ? "yd" : "m";
  const spools = Math.ceil(lengthMm / spoolMm);
  return {
    id,
    group,
    label,
    needText: needLengthText(Math.ceil(lengthMm / UNIT_MM[unit]) * UNIT_MM[unit], unit, units),
    buyText: `${countText(spools, "spool")} of ${Math.round(spoolMm / UNIT_MM[unit])}\u00a0${unit}`,
    quantity: spools,
    unit: "piece",
    ...priced(spools, price),
  };
}
