import type { Worked } from "../figures/index.ts";
import type { Cloth, ResolvedRates } from "../job/index.ts";
import type { Cost, ShoppingLine } from "../shade-plan/index.ts";
import { soldLengthText, type UnitChoice } from "../units/index.ts";
import { counted } from "../words/index.ts";
import { toCent } from "./money.ts";
import { NOTHING_TO_BUY, runningBuyText } from "./shopping-line.ts";
import { clothStepMm, clothUnit, inUnit, raisedToStep, runningLengthText, UNIT_MM } from "./sold.ts";
import { totalCost } from "./total.ts";

/** What a cutting plan takes of one cloth, mm along the bolts. */
export interface ClothTaken {
  cloth: Cloth;
  newMm: number;
  atHandMm: number;
  /** Bought for this job already, and cut into: it is paid for by the job, not bought again. */
  boughtMm: number;
}

/** What a cutting plan takes of one thing that is sold by the length. */
export interface LengthsTaken {
  lineId: string;
  noun: string;
  /** How many of each length in which it is sold, and what one costs. */
  counts: readonly { lengthMm: number; count: number; price?: number }[];
  fromStock: number;
}

/** The job's cost with cloth and lengths bought as the cutting plan takes them; all other lines stay. */
export function priceAsCut(
  cost: Cost,
  taken: { cloths: readonly ClothTaken[]; lengths: readonly LengthsTaken[] },
  rates: ResolvedRates,
  units: UnitChoice,
): Worked<Cost> {
  const cloths = new Map(taken.cloths.map((one) => [`cloth-${one.cloth.id}`, one]));
  const lengths = new Map(taken.lengths.map((one) => [one.lineId, one]));
  const shopping = cost.shopping.map((line) => {
    const cloth = cloths.get(line.id);
    if (cloth) return clothLine(line, cloth, rates, units);
    const bars = lengths.get(line.id);
    return bars ? lengthsLine(line, bars, units) : line;
  });
  return totalCost(shopping, () => shopping, cost.labour, rates);
}

function clothLine(
  line: ShoppingLine,
  { cloth, newMm, atHandMm, boughtMm: alreadyMm }: ClothTaken,
  { wasteShare }: ResolvedRates,
  units: UnitChoice,
): ShoppingLine {
  const unit = clothUnit(units);
  const extra = cloth.repeat === undefined ? 1 + wasteShare : 1;
  const boughtMm = raisedToStep(newMm * extra, cloth.soldByMm ?? clothStepMm(units));
  const { onHand: _, ...rest } = line;
  return {
    ...rest,
    needText: runningLengthText(newMm + atHandMm, unit, units),
    buyText: alreadyText(
      runningBuyText(boughtMm, unit, units),
      runningLengthText(alreadyMm, unit, units),
      alreadyMm,
    ),
    quantity: inUnit(boughtMm, unit),
    ...(atHandMm > 0 ? { onHand: inUnit(atHandMm, unit) } : {}),
    ...(line.price === undefined
      ? {}
      : { cost: toCent(((boughtMm + alreadyMm) / UNIT_MM[unit]) * line.price) }),
  };
}

function alreadyText(buyText: string, bought: string, alreadyMm: number): string {
  return alreadyMm > 0 ? `${buyText}; ${bought} bought already` : buyText;
}

function lengthsLine(
  line: ShoppingLine,
  { noun, counts, fromStock }: LengthsTaken,
  units: UnitChoice,
): ShoppingLine {
  const { onHand: _, cost: __, price: usual, ...rest } = line;
  const words = counts.map(
    ({ count, lengthMm }) => `${counted(count, noun)} of ${soldLengthText(lengthMm, units)}`,
  );
  const prices = new Set(counts.length === 0 ? [usual] : counts.map((one) => one.price));
  const [each] = prices;
  return {
    ...rest,
    // Lengths that differ have no one price.
    ...(prices.size > 1 || each === undefined ? {} : { price: each }),
    buyText: words.length === 0 ? NOTHING_TO_BUY : words.join(" and "),
    quantity: counts.reduce((sum, { count }) => sum + count, 0),
    ...(fromStock > 0 ? { onHand: fromStock } : {}),
    ...(counts.some(({ price }) => price === undefined)
      ? {}
      : { cost: toCent(counts.reduce((sum, { count, price = 0 }) => sum + count * price, 0)) }),
  };
}
