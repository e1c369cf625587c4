import { fineText } from "../../units/index.ts";
import type { LockContext } from "../shade-context.ts";
import { drawCordSwatch, SWATCH_WIDTH } from "../typeset/cord-swatch.ts";
import { type FactLine, factTable } from "../typeset/fact-list.ts";
import { figure } from "../typeset/figure.ts";
import { type ChapterHead, openChapter } from "../typeset/heading.ts";
import { besideHeight, table, tablesBeside } from "../typeset/table.ts";
import type { CellLike, Table } from "../typeset/table-spec.ts";

const LEAST_FIGURE_PT = 190;
const MOST_FIGURE_PT = 320;
/** Caption and white round the figure, pt. */
const AROUND_FIGURE_PT = 52;

/** The lock, enlarged: which slot each cord takes, from which end, in which order. */
export function lockPage(context: LockContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, { ...head, lead: "Drawn from below. Cords carry the numbers of their columns." });
  const lock = { ...factTable("The lock", lockFacts(context), [1, 1.25]), heading: "The lock" };
  const [order, places] = [threading(context), slots(context)];
  const free = (right: readonly Table[]) => book.room - besideHeight(book, [lock], right) - AROUND_FIGURE_PT;
  if (free([order, places]) >= LEAST_FIGURE_PT) {
    figure(book, context.sheet("lock"), Math.min(MOST_FIGURE_PT, free([order, places])));
    tablesBeside(book, [lock], [order, places]);
  } else {
    figure(book, context.sheet("lock"), Math.max(LEAST_FIGURE_PT, Math.min(MOST_FIGURE_PT, free([places]))));
    tablesBeside(book, [lock], [places]);
    table(book, order);
  }
  refused(context);
}

function lockFacts({ shade, length }: LockContext): FactLine[] {
  const { lift, board } = shade;
  const { seat } = lift;
  const free = seat.feasibleMm.map(([from, to]) => `${length(from)} to ${length(to)}`).join(", or ");
  const place = seat.kind === "between" ? "between the last two eyes" : "outside the last eye";
  return [
    { label: "Lock", text: lift.lockName },
    { label: "Side", text: lift.controlSide },
    { label: "Seat", text: place },
    { label: "Centre from the board’s left", text: length(seat.xMm - board.leftMm) },
    { label: "Centre from the left edge", text: length(seat.xMm) },
    ...(free === "" ? [] : [{ label: "Clear of eyes from", text: free }]),
    { label: "Centre from the wall side", text: length(seat.zMm) },
    { label: "Housing", text: `${length(lift.housingLengthMm)} × ${length(lift.housingWidthMm)}` },
    { label: "Toothed roller", text: `towards the ${seat.facing}` },
    { label: "Cord", text: `${lift.cordName}, ${fineText(lift.cordDiameterMm)}` },
  ];
}

function slots({ shade, length }: LockContext): Table {
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

function threading({ book, shade }: LockContext): Table {
  const { lift } = shade;
  return {
    heading: "Threading order",
    title: "Threading order",
    intro:
      "In this order no cord has to pass over one that is already in. Slots, and places in a slot, are counted from the wall.",
    columns: [
      { title: "", share: 0.4 },
      { title: "Cord", share: 1.4 },
      { title: "From", share: 0.9 },
      { title: "Slot", share: 0.6 },
      { title: "Place in slot", share: 1.3 },
      { title: "Eyes passed", share: 1.5 },
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
        cord === undefined ? "" : cord.entersFrom,
        { text: cord === undefined ? "" : String(cord.slot), strong: true },
        cord === undefined ? "" : String(cord.placeInSlot),
        cord === undefined ? "" : cord.eyes.join(", "),
      ];
    }),
  };
}

/** Locks that stood before it and do not take these cords. */
function refused({ book, shade }: LockContext): void {
  const { refusedLocks } = shade.lift;
  if (refusedLocks === undefined || refusedLocks.length === 0) return;
  table(book, {
    heading: "Locks that were refused",
    title: "Locks that were refused, and why",
    columns: [
      { title: "Lock", share: 1 },
      { title: "Why", share: 3 },
    ],
    rows: refusedLocks.map(({ lockName, reason }): CellLike[] => [{ text: lockName, strong: true }, reason]),
  });
}
