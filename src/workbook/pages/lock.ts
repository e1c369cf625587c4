import { fineText } from "../../units/index.ts";
import { drawCordSwatch, SWATCH_WIDTH } from "../cord-swatch.ts";
import { type FactLine, factTable } from "../fact-list.ts";
import { figure } from "../figure.ts";
import { type ChapterHead, openChapter } from "../heading.ts";
import type { ShadeContext } from "../shade-context.ts";
import { table, tablesBeside } from "../table.ts";
import type { CellLike, Table } from "../table-spec.ts";

/** The lock, enlarged: which slot each cord takes, from which end, in which order. */
export function lockPage(context: ShadeContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, { ...head, lead: "Drawn from below. Cords carry the numbers of their columns." });
  figure(book, context.sheet("lock"), 270);
  const lock = { ...factTable("The lock", lockFacts(context), [1, 1.5]), heading: "The lock" };
  tablesBeside(book, lock, slots(context));
  table(book, threading(context));
}

function lockFacts({ shade, length }: ShadeContext): FactLine[] {
  const { lift, board } = shade;
  const { seat } = lift;
  const free = seat.feasibleMm.map(([from, to]) => `${length(from)} to ${length(to)}`).join(", or ");
  const place = seat.kind === "between" ? "between the last two eyes" : "outside the last eye";
  return [
    { label: "Lock", text: lift.lockName },
    { label: "Side", text: `${lift.controlSide}, ${place}` },
    { label: "Centre, from the board’s left end", text: length(seat.xMm - board.leftMm) },
    { label: "Centre, from the left finished edge", text: length(seat.xMm) },
    ...(free === "" ? [] : [{ label: "Clear of eyes and ends from", text: free }]),
    { label: "Centre, from the wall side", text: length(seat.zMm) },
    { label: "Housing", text: `${length(lift.housingLengthMm)} × ${length(lift.housingWidthMm)}` },
    { label: "Toothed roller", text: `towards the ${seat.facing}` },
    { label: "Cord", text: `${lift.cordName}, ${fineText(lift.cordDiameterMm)}` },
  ];
}

function slots({ shade, length }: ShadeContext): Table {
  return {
    heading: "Slots, from the wall outwards",
    title: "Slots of the lock, from the wall outwards",
    columns: [
      { title: "", share: 0.8 },
      { title: "From the wall side", share: 1.4, align: "measure" },
      { title: "Cords", share: 2 },
    ],
    rows: shade.lift.slots.map((slot): CellLike[] => [
      { text: `Slot ${slot.number}`, strong: true },
      length(slot.zMm),
      slot.cords.length > 0
        ? slot.cords.join(", ")
        : { text: slot.usable ? "none" : "not used", quiet: true },
    ]),
  };
}

function threading({ book, shade }: ShadeContext): Table {
  const { lift } = shade;
  return {
    heading: "Threading order",
    title: "Threading order",
    intro: "In this order no cord has to pass over one that is already in.",
    columns: [
      { title: "", share: 0.5 },
      { title: "Cord", share: 1.3 },
      { title: "Comes in from", share: 1.3 },
      { title: "Slot", share: 0.7 },
      { title: "Place in the slot, from the wall", share: 2 },
      { title: "Passes the eyes", share: 1.6 },
    ],
    rows: lift.threading.map((number, i): CellLike[] => {
      const cord = lift.cords.find((one) => one.number === number);
      return [
        { text: String(i + 1), quiet: true },
        {
          text: String(number),
          strong: true,
          sign: { widthPt: SWATCH_WIDTH, draw: (x, y) => drawCordSwatch(book.pen, number, x, y) },
        },
        cord === undefined ? "" : `the ${cord.entersFrom}`,
        { text: cord === undefined ? "" : String(cord.slot), strong: true },
        cord === undefined ? "" : String(cord.placeInSlot),
        cord === undefined ? "" : cord.eyes.join(", "),
      ];
    }),
  };
}
