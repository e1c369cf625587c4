import { dayText } from "../../typeset/day-text.ts";
import { section } from "../../typeset/heading.ts";
import { paragraph } from "../../typeset/paragraph.ts";
import { TYPE } from "../../typeset/type-scale.ts";
import { cautionBand, cautionBandHeight, childrenAndCords } from "../caution-band.ts";
import { childSafetyChoices } from "./choices.ts";
import {
  notToBeSent,
  type OfferPaper,
  offerHead,
  offerTable,
  percentText,
  priceLines,
  SIGNATURES_PT,
  signatures,
  sums,
  termsText,
} from "./offer-head.ts";

/** A line that it was read, with the white under it. */
const READ_PT = TYPE.body.leadingPt + 10;

/** What is offered, at what price, for how long, on what terms. */
export function quotePage(paper: OfferPaper): void {
  const { book, offer, createdOn } = paper;
  offerHead(paper, "Quote", [...nameAndDay(paper), ["Stands until", dayText(createdOn, offer.validDays)]]);
  notToBeSent(paper);
  offerTable(paper);
  sums(paper, priceLines(paper));
  if (offer.deposit > 0)
    paragraph(
      book,
      `${percentText(offer.depositShare)} of it is paid with the order; work begins when it is.`,
      { after: 4 },
    );
  paragraph(book, `This quote stands for ${offer.validDays} days.`, { after: 4 });
  termsText(paper);
  cordsAndChildren(paper);
  book.y += 6;
  cautions(paper);
}

/** The same, agreed to and signed. */
export function orderPage(paper: OfferPaper): void {
  const { book, offer } = paper;
  offerHead(paper, "Order", [...nameAndDay(paper)]);
  notToBeSent(paper);
  offerTable(paper);
  sums(paper, [
    ...priceLines(paper),
    ...withDeposit(paper, [
      [`Deposit, ${percentText(offer.depositShare)}, due now`, offer.deposit],
      ["Due when it hangs", offer.balance],
    ]),
  ]);
  paragraph(
    book,
    "Sizes, cloth and the way each shade is worked are as listed; they are made to measure from them.",
    { after: 4 },
  );
  termsText(paper);
  cordsAndChildren(paper);
  // What is signed stands over the names.
  book.need(READ_PT + cautionBandHeight(book, cautionOf(paper)) + SIGNATURES_PT);
  paragraph(book, "I have read what is said here about cords and children.", { after: 10 });
  cautions(paper);
  signatures(paper, ["Client, date", "Maker, date"]);
}

/** What is to be paid, and when. */
export function invoicePage(paper: OfferPaper): void {
  const { offer, createdOn } = paper;
  offerHead(paper, "Invoice", [...nameAndDay(paper), ["To be paid by", dayText(createdOn, offer.payDays)]]);
  notToBeSent(paper);
  offerTable(paper);
  sums(paper, [
    ...priceLines(paper),
    ...withDeposit(paper, [
      ["Deposit, where it was paid", -offer.deposit],
      ["To be paid", offer.balance],
    ]),
  ]);
  termsText(paper);
  cautions(paper);
}

/** What every one of these papers says of itself. */
function nameAndDay({ plan, createdOn }: OfferPaper): [string, string][] {
  return [
    ["Job", plan.jobName],
    ["Number", plan.offer?.number ?? ""],
    ["Date", dayText(createdOn)],
  ];
}

/** Lines that only a paper with a deposit has. */
function withDeposit({ offer }: OfferPaper, lines: [string, number][]): [string, number][] {
  return offer.deposit > 0 ? lines : [];
}

/** What was chosen about cords, in plain words. */
function cordsAndChildren({ book, plan, shades }: OfferPaper): void {
  section(book, "Cords and children", 60);
  for (const words of childSafetyChoices(plan, shades)) paragraph(book, words, { after: 4 });
}

function cautionOf({ shades }: OfferPaper) {
  return childrenAndCords(shades[0]?.cautions ?? []);
}

function cautions(paper: OfferPaper): void {
  cautionBand(paper.book, cautionOf(paper));
}
