import type { BoltPlan } from "../../cutting/index.ts";
import { type BoltDrawingInput, type Drawing, drawBoltStretches } from "../../drawing/index.ts";
import {
  boltName,
  type ClothCutting,
  type CuttingPlan,
  clothGapWords,
  cuttingTicket,
} from "../../plan/index.ts";
import type { Caution } from "../../shade-plan/index.ts";
import { clothLengthText, lengthText } from "../../units/index.ts";
import type { Book } from "../typeset/book.ts";
import { AFTER_FIGURE_PT, figure, layFigure } from "../typeset/figure.ts";
import { openPage, section } from "../typeset/heading.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { flowTable, type LaidTable, layTable, tableHeight } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { tickCell } from "../typeset/tick-cell.ts";
import { cautionBand } from "./caution-band.ts";

const DRAWING_PT = 300;
/** What a drawing is left of that where its ticket would else go over the page. */
const LEAST_DRAWING_PT = 190;
/** Longest part of a bolt on one drawing, in widths of the bolt. */
const STRETCH_WIDTHS = 2;

/** The cutting of one cloth: every bolt as it lies, and a ticket with check sums for each. */
export function clothTickets(book: Book, cutting: CuttingPlan, cloth: ClothCutting, caution?: Caution): void {
  openPage(book, {
    title: `Cutting: ${cloth.clothName}`,
    lead: "All pieces of all shades together. Cut in the order of the numbers, and check each measure before the next cut.",
  });
  cautionBand(book, caution);
  paragraph(book, clothGapWords(cloth, cutting.units));
  if (!("bolts" in cloth.answer)) return;
  for (const bolt of cloth.answer.bolts) boltTicket(book, cutting, cloth, bolt);
}

function boltTicket(book: Book, { units }: CuttingPlan, cutting: ClothCutting, bolt: BoltPlan): void {
  const input: BoltDrawingInput = { units, cutting, bolt };
  const of = cutting.problem.bolts.find(({ id }) => id === bolt.boltId);
  const name = boltName(cutting, bolt.boltId);
  section(book, `${name}: ${clothLengthText(bolt.usedMm, units)} of it`, DRAWING_PT);
  const startsAnew = cutting.problem.repeat !== undefined;
  if (startsAnew) {
    const rowMm = of?.rowMm ?? 0;
    paragraph(
      book,
      rowMm > 0
        ? `A repeat of the pattern begins ${lengthText(rowMm, units)} from the end.`
        : "Square the end where a repeat of the pattern begins: all measures count from there.",
    );
  }
  const ticket = ticketTable(book, input, name);
  let last: Drawing | undefined;
  for (const drawing of drawBoltStretches(input, STRETCH_WIDTHS * (of?.widthMm ?? 0))) {
    if (last !== undefined) figure(book, last, DRAWING_PT);
    last = drawing;
  }
  if (last !== undefined) figure(book, last, heightOverTicket(book, last, ticket));
  if (ticket !== undefined) flowTable(book, ticket);
}

/** As high as usual, or so much less that the ticket under it ends on the same page. */
function heightOverTicket(book: Book, drawing: Drawing, ticket: LaidTable | undefined): number {
  if (ticket === undefined) return DRAWING_PT;
  const { drawnPt, heightPt } = layFigure(book, drawing, book.width, DRAWING_PT);
  const roomPt = heightPt > book.room ? book.bottom - book.top : book.room;
  const overPt = heightPt + AFTER_FIGURE_PT + tableHeight(ticket) - roomPt;
  const lessPt = drawnPt - overPt - 1;
  return overPt > 0 && lessPt >= LEAST_DRAWING_PT ? lessPt : DRAWING_PT;
}

/** Every cut of a bolt in its order; none where it is not cut. */
function ticketTable(
  book: Book,
  { units, cutting, bolt }: BoltDrawingInput,
  name: string,
): LaidTable | undefined {
  const lines = cuttingTicket(cutting, bolt, units);
  if (lines.length === 0) return undefined;
  return layTable(book, {
    heading: `Ticket: ${name}`,
    title: `Cuts of ${name} in their order`,
    columns: [
      { title: "Cut", share: 0.8 },
      { title: "How", share: 3.7 },
      { title: "Sets free", share: 2.6 },
      { title: "Check", share: 2.2 },
      { title: "Within", share: 0.7 },
    ],
    rows: lines.map(({ numbers, how, frees, check, within }): CellLike[] => [
      tickCell(book, numbers),
      how,
      { text: frees, strong: true },
      check,
      within,
    ]),
  });
}
