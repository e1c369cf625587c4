import { moneyText } from "../../figures/index.ts";
import type { Plan } from "../../plan/index.ts";
import type { Cost, ShoppingLine } from "../../shade-plan/index.ts";
import { counted } from "../../words/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import type { Book } from "../typeset/book.ts";
import { openPage } from "../typeset/heading.ts";
import { table, tablesBeside } from "../typeset/table.ts";
import type { CellLike, TableSpec } from "../typeset/table-spec.ts";
import { drawTickBox, TICK_BOX_PT } from "../typeset/tick-box.ts";

const GROUP_NAMES: Record<ShoppingLine["group"], string> = {
  cloth: "Cloth",
  cord: "Cord",
  hardware: "Hardware",
  board: "Board and bar",
  sundries: "Sundries",
};

/** What to buy, and what it comes to. */
function shoppingAndCost(book: Book, cost: Cost): void {
  shopping(book, cost);
  tablesBeside(book, labour(cost), [totals(cost)]);
}

function shopping(book: Book, cost: Cost): void {
  const rows = Object.entries(GROUP_NAMES).flatMap(([group, name]): CellLike[][] => {
    const lines = cost.shopping.filter((line) => line.group === group);
    if (lines.length === 0) return [];
    return [[{ text: name, strong: true }], ...lines.map((line) => shoppingRow(book, line, cost.currency))];
  });
  if (rows.length === 0) return;
  const leads = new Set(rows.flatMap((row, i) => (row.length === 1 ? [i] : [])));
  table(book, {
    heading: "Shopping list",
    title: "What to buy",
    columns: [
      { title: "", share: 3.4 },
      { title: "Needed", share: 1.7 },
      { title: "Buy", share: 1.7 },
      { title: "Price each", share: 1.2, align: "right" },
      { title: "Cost", share: 1.3, align: "right" },
    ],
    rows,
    leads,
  });
}

function shoppingRow(book: Book, line: ShoppingLine, currency: string): CellLike[] {
  return [
    {
      text: line.label,
      sign: { widthPt: TICK_BOX_PT + 8, draw: (x, y) => drawTickBox(book.pen, x, y) },
    },
    line.needText,
    { text: line.buyText, strong: true },
    priceText(line, currency),
    line.cost === undefined ? "" : moneyText(line.cost, currency),
  ];
}

/** What one costs: nothing to say where what is bought differs in price. */
function priceText({ price, cost }: ShoppingLine, currency: string): CellLike {
  if (price !== undefined) return moneyText(price, currency);
  return cost === undefined ? { text: "no price", quiet: true } : "";
}

function labour(cost: Cost): TableSpec[] {
  if (cost.labour.length === 0) return [];
  const minutes = cost.labour.reduce((sum, line) => sum + line.minutes, 0);
  const rows: CellLike[][] = cost.labour.map((line) => [
    line.label,
    timeText(line.minutes),
    line.cost === undefined ? "" : moneyText(line.cost, cost.currency),
  ]);
  rows.push(["In all", timeText(minutes), moneyText(cost.labourCost, cost.currency)]);
  return [
    {
      title: "Labour",
      heading: "Labour",
      columns: [
        { title: "Work", share: 3 },
        { title: "Time", share: 1.4, align: "right" },
        { title: "Cost", share: 1.6, align: "right" },
      ],
      rows,
      sum: true,
    },
  ];
}

function timeText(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  return hours === 0 ? `${whole} min` : `${hours} h ${whole % 60} min`;
}

function totals(cost: Cost): TableSpec {
  const money = (amount: number) => moneyText(amount, cost.currency);
  return {
    title: "What it comes to",
    heading: "What it comes to",
    ...(cost.unpriced.length === 0
      ? {}
      : { intro: `Left out of the total, since they have no price: ${cost.unpriced.join(", ")}.` }),
    columns: [
      { title: "", share: 4 },
      { title: "", share: 2, align: "right" },
    ],
    rows: [
      ["Materials", money(cost.materials)],
      ["Labour", money(cost.labourCost)],
      ["Tax", money(cost.tax)],
      ["Total", money(cost.total)],
    ],
    sum: true,
  };
}

/** What this shade alone would take. */
export function shoppingPage({ book, shade }: ShadeContext): void {
  openPage(book, { title: "Shopping", lead: "For this shade alone, in the units in which things are sold." });
  shoppingAndCost(book, shade.cost);
}

/** All shades of the job together. */
export function jobShoppingPage(book: Book, plan: Plan): void {
  openPage(book, {
    title: "Shopping",
    lead: `For ${counted(plan.shades.length, "shade")} together, in the units in which things are sold.`,
  });
  shoppingAndCost(book, plan.cost);
}
