import type { ShoppingLine } from "../shade-plan/index.ts";
import { lengthText, soldLengthText, type UnitChoice } from "../units/index.ts";
import { counted } from "../words/index.ts";
import { longestMm } from "./longest.ts";
import { labelOf } from "./need.ts";
import type { Bought, BoughtCounted, BoughtLengths, BoughtRunning, BoughtSpools } from "./shop.ts";
import { runningLengthText, UNIT_MM } from "./sold.ts";

type Words = Pick<ShoppingLine, "needText" | "buyText">;

/** What a line says to buy where stock serves. */
export const NOTHING_TO_BUY = "none: at hand";

/** One line of a shopping list, its numbers put into words. */
export function shoppingLineOf(bought: Bought, units: UnitChoice): ShoppingLine {
  const { need, quantity, unit, onHand, price, cost } = bought;
  return {
    id: need.id,
    group: need.group,
    label: labelOf(need),
    ...wordsOf(bought, units),
    quantity,
    unit,
    ...(onHand === undefined ? {} : { onHand }),
    ...(price === undefined ? {} : { price }),
    ...(cost === undefined ? {} : { cost }),
  };
}

function wordsOf(bought: Bought, units: UnitChoice): Words {
  if (isRunning(bought)) return runningWords(bought, units);
  if (isLengths(bought)) return lengthsWords(bought, units);
  return isCounted(bought) ? countedWords(bought) : spooledWords(bought, units);
}

const isRunning = (bought: Bought): bought is BoughtRunning => bought.need.sort === "running";
const isLengths = (bought: Bought): bought is BoughtLengths => bought.need.sort === "lengths";
const isCounted = (bought: Bought): bought is BoughtCounted => bought.need.sort === "counted";

/** What is bought of a running length, as one asks for it at the counter. */
export function runningBuyText(boughtMm: number, unit: "yd" | "ft" | "m", units: UnitChoice): string {
  return boughtMm === 0 ? NOTHING_TO_BUY : runningLengthText(boughtMm, unit, units);
}

function runningWords({ need, neededMm, boughtMm }: BoughtRunning, units: UnitChoice): Words {
  return {
    needText: runningLengthText(neededMm, need.unit, units),
    buyText: runningBuyText(boughtMm, need.unit, units),
  };
}

function lengthsWords(
  { need, neededMm, stockMm, overlong, quantity }: BoughtLengths,
  units: UnitChoice,
): Words {
  const whole = quantity - overlong;
  const lengthWords = stockMm === undefined ? "" : ` of ${soldLengthText(stockMm, units)}`;
  const words: string[] = [];
  if (whole > 0) words.push(`${counted(whole, need.noun)}${lengthWords}`);
  if (overlong > 0) {
    const longest = lengthText(longestMm(need.cutsMm), units);
    words.push(`${overlong} cut to size, the longest ${longest}`);
  }
  return {
    needText: piecesText(need.cutsMm.length, neededMm, units),
    buyText: words.length === 0 ? NOTHING_TO_BUY : words.join(" and "),
  };
}

/** Bars are sawn by the inch or millimetre, whatever lengths they are sold in. */
function piecesText(count: number, sumMm: number, units: UnitChoice): string {
  return count === 1
    ? `1 piece of ${lengthText(sumMm, units)}`
    : `${count} pieces, ${lengthText(sumMm, units)} together`;
}

function countedWords({ need, quantity }: BoughtCounted): Words {
  const { pieces, packOf, packNoun } = need;
  return {
    needText: String(pieces),
    buyText:
      packNoun === undefined
        ? String(quantity)
        : `${counted(quantity, packNoun, manyOf(packNoun))} of ${packOf}`,
  };
}

function manyOf(noun: string): string {
  return noun.endsWith("x") ? `${noun}es` : `${noun}s`;
}

function spooledWords({ need, quantity }: BoughtSpools, units: UnitChoice): Words {
  const unit = units.system === "imperial" ? "yd" : "m";
  const needed = Math.ceil(need.lengthMm / UNIT_MM[unit]) * UNIT_MM[unit];
  return {
    needText: runningLengthText(needed, unit, units),
    buyText: `${counted(quantity, "spool")} of ${Math.round(need.spoolMm / UNIT_MM[unit])}\u00a0${unit}`,
  };
}
