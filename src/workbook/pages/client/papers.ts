import { section } from "../../typeset/heading.ts";
import { paragraph } from "../../typeset/paragraph.ts";
import { cautionBand, childrenAndCords } from "../caution-band.ts";
import { childSafetyChoices } from "./choices.ts";
import {
  dayText,
  notToBeSent,
  type OfferPaper,
  offerHead,
  offerTable,
  percentText,
  priceLines,
  signatures,
  sums,
  termsText,
} from "./offer-head.ts";

/** What is offered, at what price, for how long, on what terms. */
export function quotePage(paper: OfferPaper): void {
  const { book, plan, offer, shades, createdOn } = paper;
  offerHead(paper, "Quote", [
    ["Job", plan.jobName],
    ["Number", plan.offer?.number ?? ""],
    ["Date", dayText(createdOn)],
    ["Stands until", dayText(createdOn, offer.validDays)],
  ]);
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
  section(book, "Cords and children", 60);
  for (const words of childSafetyChoices(plan, shades)) paragraph(book, words, { after: 4 });
  book.y += 6;
  cautionBand(book, childrenAndCords(shades[0]?.cautions ?? []));
}

/** The same, agreed to and signed. */
export function orderPage(paper: OfferPaper): void {
  const { book, plan, offer, shades, createdOn } = paper;
  offerHead(paper, "Order", [
    ["Job", plan.jobName],
    ["Number", plan.offer?.number ?? ""],
    ["Date", dayText(createdOn)],
  ]);
  notToBeSent(paper);
  offerTable(paper);
  sums(paper, [
    ...priceLines(paper),
    ...(offer.deposit > 0
      ? ([
          [`Deposit, ${percentText(offer.depositShare)}, due now`, offer.deposit],
          ["Due when it hangs", offer.balance],
        ] as [string, number][])
      : []),
  ]);
  paragraph(
    book,
    "Sizes, cloth and the way each shade is worked are as listed; they are made to measure from them.",
    { after: 4 },
  );
  termsText(paper);
  section(book, "Cords and children", 60);
  for (const words of childSafetyChoices(plan, shades)) paragraph(book, words, { after: 4 });
  paragraph(book, "I have read what stands here about cords and children.", { after: 2 });
  cautionBand(book, childrenAndCords(shades[0]?.cautions ?? []));
  signatures(paper, ["Client, date", "Maker, date"]);
}

/** What is to be paid, and when. */
export function invoicePage(paper: OfferPaper): void {
  const { book, plan, offer, createdOn, shades } = paper;
  offerHead(paper, "Invoice", [
    ["Job", plan.jobName],
    ["Number", plan.offer?.number ?? ""],
    ["Date", dayText(createdOn)],
    ["To be paid by", dayText(createdOn, offer.payDays)],
  ]);
  notToBeSent(paper);
  offerTable(paper);
  sums(paper, [
    ...priceLines(paper),
    ...(offer.deposit > 0
      ? ([
          ["Deposit, where it was paid", -offer.deposit],
          ["To be paid", offer.balance],
        ] as [string, number][])
      : []),
  ]);
  termsText(paper);
  cautionBand(book, childrenAndCords(shades[0]?.cautions ?? []));
}
