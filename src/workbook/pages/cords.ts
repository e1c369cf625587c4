import { cordStyle } from "../../drawing/index.ts";
import { cordLengthText, forceText } from "../../units/index.ts";
import { hasLock, hasTube, type LockContext, type ShadeContext, type TubeContext } from "../shade-context.ts";
import { drawCordSwatch, SWATCH_WIDTH } from "../typeset/cord-swatch.ts";
import { type FactLine, factList } from "../typeset/fact-list.ts";
import { figureBeside } from "../typeset/figure.ts";
import { type ChapterHead, openChapter } from "../typeset/heading.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";

const ROW_PT = 21;
const LEAST_FIGURE_PT = 260;
const MOST_FIGURE_PT = 400;

/** Every cord from its bottom ring to its end: how it is made up and where to cut it. */
export function cordsPage(context: ShadeContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, {
    ...head,
    lead: "Cut each cord to its length and label it with its number before you string it.",
  });
  const split = { figureColumns: 7, maxHeight: figureHeight(context) };
  figureBeside(book, context.sheet("back"), split, (right) => {
    const facts = together(context);
    factList(book, "All cords together", facts, {
      ...right,
      heading: "All cords together",
      shares: [1.4, 1],
    });
  });
  lengths(context);
}

/** As much height as the table of the cords leaves on the page. */
function figureHeight({ book, shade }: ShadeContext): number {
  const tableHeight = (shade.lift.cords.length + 2) * ROW_PT + 96;
  return Math.max(LEAST_FIGURE_PT, Math.min(MOST_FIGURE_PT, book.room - tableHeight));
}

function lengths(context: ShadeContext): void {
  if (hasLock(context)) lockLengths(context);
  if (hasTube(context)) tubeLengths(context);
}

function numberCell({ book }: ShadeContext, number: number): CellLike {
  return {
    text: String(number),
    strong: true,
    sign: { widthPt: SWATCH_WIDTH, draw: (x, y) => drawCordSwatch(book.pen, number, x, y) },
  };
}

function lockLengths(context: LockContext): void {
  const { book, shade, plan, length } = context;
  const { lift } = shade;
  const rows = lift.cords.map((cord): CellLike[] => [
    numberCell(context, cord.number),
    cordStyle(cord.number).colourName,
    length(cord.riseMm),
    length(cord.runMm),
    length(cord.tailMm),
    length(cord.knotsMm),
    { text: length(cord.cutMm), strong: true },
    `${cord.slot}, ${cord.entersFrom}`,
  ]);
  rows.push(["In all", "", "", "", "", "", cordLengthText(lift.cordTotalMm, plan.units), ""]);
  table(book, {
    heading: "Cord lengths",
    title: "Cord lengths: rise from the bottom ring, run along the board, tail, knots, length to cut",
    columns: [
      { title: "Cord", share: 1.15 },
      { title: "Colour", share: 1.15 },
      { title: "Rise", share: 1.15, align: "measure" },
      { title: "Run", share: 1.15, align: "measure" },
      { title: "Tail", share: 1.15, align: "measure" },
      { title: "Knots", share: 0.9, align: "measure" },
      { title: "Cut", share: 1.3, align: "measure" },
      { title: "Slot, from", share: 1.05 },
    ],
    rows,
    sum: true,
  });
}

function tubeLengths(context: TubeContext): void {
  const { book, shade, plan, length } = context;
  const { lift } = shade;
  const rows = lift.cords.map((cord): CellLike[] => [
    numberCell(context, cord.number),
    cordStyle(cord.number).colourName,
    length(cord.riseMm),
    length(cord.wrapsMm),
    length(cord.knotsMm),
    { text: length(cord.cutMm), strong: true },
  ]);
  rows.push(["In all", "", "", "", "", cordLengthText(lift.cordTotalMm, plan.units)]);
  table(book, {
    heading: "Cord lengths",
    title: "Cord lengths: rise from the bottom ring, turns that stay on the spool, knots, length to cut",
    columns: [
      { title: "Cord", share: 1.15 },
      { title: "Colour", share: 1.15 },
      { title: "Rise", share: 1.15, align: "measure" },
      { title: "On the spool", share: 1.2, align: "measure" },
      { title: "Knots", share: 0.9, align: "measure" },
      { title: "Cut", share: 1.3, align: "measure" },
    ],
    rows,
    sum: true,
  });
}

function together(context: ShadeContext): FactLine[] {
  const { shade, plan, length } = context;
  const { lift } = shade;
  const sleeves = lift.wovenSleeves;
  const facts: FactLine[] = [
    { label: "Weight on the cords, raised", text: forceText(lift.heldN, plan.units) },
    ...(lift.kind === "motor"
      ? []
      : [{ label: "Pull at the hand, where it is greatest", text: forceText(lift.pullN, plan.units) }]),
    ...(sleeves === undefined
      ? []
      : [{ label: "Woven sleeves", text: `${sleeves.count}, each ${length(sleeves.cutMm)}` }]),
  ];
  return hasLock(context) ? [...facts, ...tailFacts(context)] : facts;
}

function tailFacts({ shade, length }: LockContext): FactLine[] {
  const { lift } = shade;
  const facts: FactLine[] = [
    { label: "Tail below the lock, lowered", text: length(lift.tailLoweredMm) },
    { label: "Tail below the lock, raised", text: length(lift.tailRaisedMm) },
  ];
  if (lift.tailEndAboveFloorLoweredMm !== undefined) {
    facts.push({
      label: "End of the tail above the floor, lowered",
      text: length(lift.tailEndAboveFloorLoweredMm),
    });
  }
  if (lift.tailEndAboveFloorRaisedMm !== undefined) {
    facts.push({
      label: "End of the tail above the floor, raised",
      text: length(lift.tailEndAboveFloorRaisedMm),
    });
  }
  return facts;
}
