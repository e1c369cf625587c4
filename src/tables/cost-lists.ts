import type { PlanList } from "./plan-list.ts";
import { asciiText } from "./table.ts";

/** What to buy for the whole job, in the units in which it is sold. */
export const SHOPPING_LIST: PlanList = {
  name: "shopping-list",
  header: ["group", "item", "need", "buy", "quantity", "unit", "atHand", "price", "cost", "currency"],
  rowsOfJob: ({ cost }) =>
    cost.shopping.map((line) => [
      line.group,
      line.label,
      asciiText(line.needText),
      asciiText(line.buyText),
      line.quantity,
      line.unit,
      line.onHand ?? 0,
      line.price === undefined ? "" : Math.round(line.price * 10_000) / 10_000,
      line.cost ?? "",
      cost.currency,
    ]),
};

/** The work on the whole job, by the job's own times. */
export const LABOUR_LIST: PlanList = {
  name: "labour-list",
  header: ["work", "minutes", "cost", "currency"],
  rowsOfJob: ({ cost }) =>
    cost.labour.map((line) => [
      line.label,
      Math.round(line.minutes * 10) / 10,
      line.cost ?? "",
      cost.currency,
    ]),
};
