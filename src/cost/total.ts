import type { WorkingBook } from "../figures/index.ts";
import type { ResolvedRates } from "../job/index.ts";
import type { Cost, LabourLine, ShoppingLine } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { sumCents } from "./money.ts";

/** Adds the lines up, with tax, and names the lines that have no price. */
export function totalCost(
  shopping: ShoppingLine[],
  labour: LabourLine[],
  rates: ResolvedRates,
  book: WorkingBook,
): Cost {
  const materials = sumCents(shopping.map((line) => line.cost ?? 0));
  const labourCost = sumCents(labour.map((line) => line.cost ?? 0));
  const tax = book.figure("cost.tax", {
    label: "Tax",
    symbol: "X",
    unit: "money",
    formula: "round((M + A)·t·100) / 100",
    given: {
      M: [materials, "money", "materials"],
      A: [labourCost, "money", "labour"],
      t: [rates.taxShare, "ratio", "tax, share of one"],
    },
    cite: cite("arithmetic", "rounded to the cent once"),
    compute: ({ M, A, t }) => Math.round((M + A) * t * 100) / 100,
  });
  const total = book.figure("cost.total", {
    label: "Total",
    symbol: "C",
    unit: "money",
    formula: "round((M + A + X)·100) / 100",
    given: {
      M: [materials, "money", "materials"],
      A: [labourCost, "money", "labour"],
      X: [tax, "money", "tax"],
    },
    cite: cite("arithmetic"),
    compute: ({ M, A, X }) => Math.round((M + A + X) * 100) / 100,
  });
  return {
    currency: rates.currency,
    shopping,
    labour,
    materials,
    labourCost,
    tax,
    total,
    unpriced: shopping
      .filter((line) => line.quantity > 0 && line.cost === undefined)
      .map((line) => line.label),
  };
}
