import { type Offer, type OfferedCost, offerOf } from "../../../cost/index.ts";
import { moneyText } from "../../../figures/index.ts";
import { STYLE_NAMES } from "../../../job/index.ts";
import type { Plan, ShadePlan } from "../../../plan/index.ts";
import { lengthText } from "../../../units/index.ts";
import { counted } from "../../../words/index.ts";
import type { Book } from "../../typeset/book.ts";
import { openPage } from "../../typeset/heading.ts";
import { columns } from "../../typeset/paper.ts";
import { paragraph, setLines } from "../../typeset/paragraph.ts";
import { table } from "../../typeset/table.ts";
import type { CellLike } from "../../typeset/table-spec.ts";
import { painted, TYPE } from "../../typeset/type-scale.ts";
import { capital } from "../sentence.ts";

/** A paper for the client: whose it is, of which shades, at what price. */
export interface OfferPaper {
  book: Book;
  plan: Plan;
  shades: readonly ShadePlan[];
  offer: Offer;
  createdOn?: Date;
}

export function offerPaper(
  book: Book,
  plan: Plan,
  shades: readonly ShadePlan[],
  createdOn?: Date,
): OfferPaper {
  const { values: offer } = offerOf(costOf(plan, shades), shades, plan.cost.taxShare, plan.offer);
  return { book, plan, shades, offer, ...(createdOn === undefined ? {} : { createdOn }) };
}

/** Of a job that is printed whole, bought together; of some of its shades, each bought for alone. */
function costOf(plan: Plan, shades: readonly ShadePlan[]): OfferedCost {
  if (shades.length === plan.shades.length) return plan.cost;
  const sum = (of: (shade: ShadePlan) => number) =>
    Math.round(shades.reduce((all, shade) => all + of(shade) * 100, 0)) / 100;
  return {
    currency: plan.cost.currency,
    materials: sum(({ cost }) => cost.materials),
    labourCost: sum(({ cost }) => cost.labourCost),
    unpriced: [...new Set(shades.flatMap(({ cost }) => cost.unpriced))],
  };
}

/** Title, maker and client side by side, number and dates. Nothing typed leaves a line to write on. */
export function offerHead(
  { book, plan }: OfferPaper,
  title: string,
  facts: readonly [string, string][],
): void {
  openPage(book, { title });
  const { maker, clientAddress } = plan.offer ?? {};
  const left = block(book, maker ?? "", 0, "From");
  const right = block(book, [plan.client ?? "", clientAddress ?? ""].filter(Boolean).join("\n"), 6, "For");
  book.y = Math.max(left, right) + 10;
  table(book, {
    title: `${title}: number and dates`,
    columns: facts.map(() => ({ title: "", share: 1 })),
    rows: [
      facts.map(([label]): CellLike => ({ text: label, quiet: true })),
      facts.map(([, text]): CellLike => ({ text: text === "" ? WRITE_HERE : text, strong: true })),
    ],
    after: 14,
  });
}

const WRITE_HERE = "________________";

function block(book: Book, text: string, first: number, label: string): number {
  const { x, width } = columns(book.paper, first, 6);
  const lines = (text === "" ? WRITE_HERE : text)
    .split("\n")
    .flatMap((line) => book.lines(line === "" ? " " : line, width, TYPE.body));
  const { y } = book;
  book.tags.mark("P", () => {
    setLines(book, [label], x, y, TYPE.label);
    setLines(book, lines, x, y + TYPE.label.leadingPt + 2, TYPE.body);
  });
  return y + TYPE.label.leadingPt + 2 + lines.length * TYPE.body.leadingPt;
}

/** Every shade with its size, its cloth and its price. */
export function offerTable({ book, plan, shades, offer }: OfferPaper): void {
  const prices = new Map(offer.shades.map(({ shadeId, price }) => [shadeId, price]));
  table(book, {
    title: "Shades with their prices",
    columns: [
      { title: "Window", share: 2.2 },
      { title: "Shade", share: 2.2 },
      { title: "Width", share: 1.1, align: "measure" },
      { title: "Length", share: 1.1, align: "measure" },
      { title: "Cloth", share: 2.2 },
      { title: "Price", share: 1.5, align: "right" },
    ],
    rows: shades.map((shade): CellLike[] => [
      { text: [shade.windowName, shade.roomName].join(", "), strong: true },
      capital(STYLE_NAMES[shade.style]),
      lengthText(shade.size.finishedWidthMm, plan.units),
      lengthText(shade.size.finishedLengthMm, plan.units),
      shade.cloth.layers[0]?.clothName ?? "",
      moneyText(prices.get(shade.shadeId) ?? 0, offer.currency),
    ]),
    after: 6,
  });
}

/** Sums under each other, the last ruled off. */
export function sums({ book, offer }: OfferPaper, lines: readonly [string, number][]): void {
  const { x, width } = columns(book.paper, 5, 7);
  table(book, {
    title: "What it comes to",
    x,
    width,
    columns: [
      { title: "", share: 2.4 },
      { title: "", share: 1.4, align: "right" },
    ],
    rows: lines.map(([label, amount]): CellLike[] => [label, moneyText(amount, offer.currency)]),
    sum: true,
    after: 12,
  });
}

export function percentText(share: number): string {
  return `${Math.round(share * 1e4) / 100} %`;
}

/** Price, tax and the whole. */
export function priceLines({ offer }: OfferPaper): [string, number][] {
  const tax: [string, number][] =
    offer.tax > 0
      ? [
          ["Price without tax", offer.net],
          [`Tax, ${percentText(offer.taxShare)}`, offer.tax],
        ]
      : [];
  return [...tax, [offer.tax > 0 ? "Price, tax included" : "Price", offer.total]];
}

/**
 * A price that leaves something out, or rests on invented prices, must not go to a client as it is: said where the eye
 * falls first.
 */
export function notToBeSent({ book, plan, offer }: OfferPaper): void {
  const invented = plan.findings.some(({ id }) => id === "cost.demo-prices");
  const why = [
    ...(offer.unpriced > 0
      ? [
          `${counted(offer.unpriced, "thing")} on the shopping list ${offer.unpriced === 1 ? "has" : "have"} no price, and nothing is added up for ${offer.unpriced === 1 ? "it" : "them"}`,
        ]
      : []),
    ...(invented ? ["some prices are invented for demonstration"] : []),
  ];
  if (why.length === 0) return;
  paragraph(book, `Not to be sent yet: ${why.join("; ")}. Type the prices in the shopping list.`, {
    style: painted(TYPE.strong, "stop"),
    after: 8,
  });
}

/** Height of lines to sign on, with room to write above them, pt. */
export const SIGNATURES_PT = 46;

/** Lines to sign on. */
export function signatures({ book }: OfferPaper, labels: readonly string[]): void {
  book.need(SIGNATURES_PT);
  const top = book.y + 30;
  labels.forEach((label, i) => {
    const { x, width } = columns(book.paper, i * 6, 6);
    book.tags.artifact(() => book.pen.line(x, top, x + width - 12, top, { paint: "pencil", widthPt: 0.6 }));
    book.tags.mark("P", () => setLines(book, [book.spell(label)], x, top + 3, TYPE.small));
  });
  book.y = top + 18;
}

/** The maker’s own terms, as they were typed. */
export function termsText({ book, plan }: OfferPaper): void {
  const { terms } = plan.offer ?? {};
  for (const line of (terms ?? "").split("\n").filter((one) => one.trim() !== ""))
    paragraph(book, line, { after: 4 });
}
