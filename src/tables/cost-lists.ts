import type { Plan } from "../plan/index.ts";
import { asciiText, type Table } from "./table.ts";

/** What to buy for the whole job, in the units in which it is sold. */
export function shoppingList(plan: Plan): Table {
  return {
    name: "shopping-list",
    header: ["group", "item", "need", "buy", "quantity", "unit", "atHand", "price", "cost", "currency"],
    rows: plan.cost.shopping.map((line) => [
      line.group,
      line.label,
      asciiText(line.needText),
      asciiText(line.buyText),
      line.quantity,
      line.unit,
      line.onHand ?? 0,
      line.price === undefined ? "" : Math.round(line.price * 10_000) / 10_000,
      line.cost ?? "",
      plan.cost.currency,
    ]),
  };
}

/** The work on the whole job, by the job's own times. */
export function labourList(plan: Plan): Table {
  return {
    name: "labour-list",
    header: ["work", "minutes", "cost", "currency"],
    rows: plan.cost.labour.map((line) => [
      line.label,
      Math.round(line.minutes * 10) / 10,
      line.cost ?? "",
      plan.cost.currency,
    ]),
  };
}
