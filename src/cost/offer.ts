import { figureRule, type Worked } from "../figures/index.ts";
import { DEFAULT_OFFER, type OfferTerms } from "../job/index.ts";
import type { Cost } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";

/** What a client is asked for; money in `currency`, each sum in whole cents. */
export interface Offer {
  currency: string;
  /** What each shade is charged at, tax not included: together they are `net` to the cent. */
  shades: { shadeId: string; price: number }[];
  net: number;
  taxShare: number;
  tax: number;
  total: number;
  depositShare: number;
  deposit: number;
  /** Left to pay once the deposit is paid. */
  balance: number;
  validDays: number;
  payDays: number;
  /** Things that have no price yet: nothing is added up for them, so this is no price to send. */
  unpriced: number;
}

const NET = figureRule({
  id: "offer.net",
  label: "Price without tax",
  symbol: "N",
  unit: "money",
  formula: "round((M + A)·(1 + u)·100) / 100",
  inputs: {
    M: ["money", "materials"],
    A: ["money", "labour"],
    u: ["ratio", "put on, share of one"],
  },
  cite: cite("arithmetic"),
  compute: ({ M, A, u }) => Math.round((M + A) * (1 + u) * 100) / 100,
});

const TAX = figureRule({
  id: "offer.tax",
  label: "Tax on the price",
  symbol: "X",
  unit: "money",
  formula: "round(N·t·100) / 100",
  inputs: { N: ["money", "price without tax", "figure:offer.net"], t: ["ratio", "tax, share of one"] },
  cite: cite("arithmetic", "rounded to the cent once"),
  compute: ({ N, t }) => Math.round(N * t * 100) / 100,
});

const DEPOSIT = figureRule({
  id: "offer.deposit",
  label: "Deposit",
  symbol: "D",
  unit: "money",
  formula: "round((N + X)·d·100) / 100",
  inputs: {
    N: ["money", "price without tax", "figure:offer.net"],
    X: ["money", "tax", "figure:offer.tax"],
    d: ["ratio", "deposit, share of one"],
  },
  cite: cite("arithmetic"),
  compute: ({ N, X, d }) => Math.round((N + X) * d * 100) / 100,
});

/** What a price is made from. */
export type OfferedCost = Pick<Cost, "currency" | "materials" | "labourCost" | "unpriced">;

/** A shade of the job, and what it would cost by itself. */
interface OfferedShade {
  shadeId: string;
  cost: Pick<Cost, "materials" | "labourCost">;
}

/**
 * The price of a job for its client: what it costs, with what the maker puts on and tax. Cloth that is bought together
 * costs less than shade by shade: the price is shared out as the shades would cost alone, the last cents to the largest
 * remainders.
 */
export function offerOf(
  cost: OfferedCost,
  shades: readonly OfferedShade[],
  taxShare: number,
  terms: OfferTerms = {},
): Worked<Offer> {
  const depositShare = terms.depositShare ?? DEFAULT_OFFER.depositShare.value;
  const net = NET.figure({
    M: cost.materials,
    A: cost.labourCost,
    u: terms.markUpShare ?? DEFAULT_OFFER.markUpShare.value,
  });
  const tax = TAX.figure({ N: net.value, t: taxShare });
  const deposit = DEPOSIT.figure({ N: net.value, X: tax.value, d: depositShare });
  const cents = (amount: number) => Math.round(amount * 100);
  const total = (cents(net.value) + cents(tax.value)) / 100;
  return {
    values: {
      currency: cost.currency,
      shades: sharedOut(cents(net.value), shades),
      net: net.value,
      taxShare,
      tax: tax.value,
      total,
      depositShare,
      deposit: deposit.value,
      balance: (cents(total) - cents(deposit.value)) / 100,
      validDays: terms.validDays ?? DEFAULT_OFFER.validDays.value,
      payDays: terms.payDays ?? DEFAULT_OFFER.payDays.value,
      unpriced: cost.unpriced.length,
    },
    workings: [net, tax, deposit],
  };
}

function sharedOut(netCents: number, shades: readonly OfferedShade[]): Offer["shades"] {
  const alone = shades.map(({ cost }) => cost.materials + cost.labourCost);
  const sum = alone.reduce((a, b) => a + b, 0);
  const exact = alone.map((one) => (sum > 0 ? (netCents * one) / sum : netCents / alone.length));
  const whole = exact.map(Math.floor);
  const left = netCents - whole.reduce((a, b) => a + b, 0);
  const byRemainder = exact
    .map((one, i) => ({ i, rest: one - Math.floor(one) }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRemainder.slice(0, Math.max(0, left))) whole[i] = (whole[i] ?? 0) + 1;
  return shades.map(({ shadeId }, i) => ({ shadeId, price: (whole[i] ?? 0) / 100 }));
}
