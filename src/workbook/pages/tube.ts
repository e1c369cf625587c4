import { massText, torqueText, trimmed } from "../../units/index.ts";
import type { TubeContext } from "../shade-context.ts";
import { type FactLine, factTable } from "../typeset/fact-list.ts";
import { figure } from "../typeset/figure.ts";
import { type ChapterHead, openChapter } from "../typeset/heading.ts";
import { besideHeight, table, tablesBeside } from "../typeset/table.ts";
import type { CellLike, Table } from "../typeset/table-spec.ts";

const LEAST_FIGURE_PT = 210;
const MOST_FIGURE_PT = 340;
/** Caption and white round the figure, pt. */
const AROUND_FIGURE_PT = 52;

/** Tube, spools and drive, enlarged: what sits where, what turns it and what the hand works. */
export function tubePage(context: TubeContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, { ...head, lead: "Drawn from below. Spools carry the numbers of their columns." });
  const drive = { ...factTable("Tube and drive", driveFacts(context), [1, 1.2]), heading: "Tube and drive" };
  const right = [spools(context), supports(context)];
  const free = book.room - besideHeight(book, [drive], right) - AROUND_FIGURE_PT;
  figure(book, context.sheet("lock"), Math.max(LEAST_FIGURE_PT, Math.min(MOST_FIGURE_PT, free)));
  tablesBeside(book, [drive], right);
  refused(context);
}

function driveFacts(context: TubeContext): FactLine[] {
  const { shade, plan, length } = context;
  const { lift, board } = shade;
  const { tube, drive } = lift;
  const { units } = plan;
  return [
    { label: "Drive", text: drive.name },
    { label: "Its middle", text: `${length(drive.xMm - board.leftMm)} from the board’s left` },
    ...(drive.massMaxKg === undefined
      ? []
      : [{ label: "Heaviest shade", text: massText(drive.massMaxKg, units) }]),
    { label: "Tube", text: `${tube.name}, cut ${length(tube.lengthMm)} long` },
    { label: "Axis under board", text: length(tube.axisMm) },
    { label: "Turns left, lowered", text: trimmed(lift.wrapsLeft, 0) },
    { label: "Turns to raise it", text: trimmed(lift.turns, 1) },
    { label: "Torque lowered", text: torqueText(lift.torqueLoweredNm, units) },
    { label: "Torque raised", text: torqueText(lift.torqueRaisedNm, units) },
    ...controlFacts(context),
  ];
}

function controlFacts({ shade, length }: TubeContext): FactLine[] {
  const { lift } = shade;
  switch (lift.kind) {
    case "spring":
      return [];
    case "tube-wand":
      return [
        { label: "Wand", text: `${length(lift.wandMm)} long` },
        { label: "Turns of the wand", text: trimmed(lift.handTurns, 0) },
      ];
    case "tube-loop":
      return [
        { label: "Loop below drive", text: length(lift.loopDropMm) },
        { label: "Loop, all round", text: length(lift.loopPerimeterMm) },
        ...(lift.loopEndAboveFloorMm === undefined
          ? []
          : [{ label: "Loop above floor", text: length(lift.loopEndAboveFloorMm) }]),
      ];
    case "motor":
      return lift.raiseSeconds === undefined
        ? []
        : [{ label: "Time to raise", text: `${trimmed(lift.raiseSeconds, 0)} s` }];
  }
}

function placesTable(heading: string, title: string, rows: CellLike[][]): Table {
  return {
    heading,
    title,
    columns: [
      { title: "", share: 0.9 },
      { title: "From the board’s left end", share: 1.3, align: "measure" },
      { title: "From the left finished edge", share: 1.3, align: "measure" },
    ],
    rows,
  };
}

function spools({ shade, length }: TubeContext): Table {
  const { lift, board } = shade;
  return placesTable(
    "Spools",
    "Places of the spools",
    lift.spools.map(({ number, xMm }): CellLike[] => [
      { text: `Spool ${number}`, strong: true },
      { text: length(xMm - board.leftMm), strong: true },
      length(xMm),
    ]),
  );
}

function supports({ shade, length }: TubeContext): Table {
  const { lift, board } = shade;
  const row = (name: string, xMm: number): CellLike[] => [
    { text: name, strong: true },
    { text: length(xMm - board.leftMm), strong: true },
    length(xMm),
  ];
  return placesTable("Drive and supports", "Places of the drive and of the tube’s supports", [
    row("Drive", lift.drive.xMm),
    ...lift.supports.map(({ number, xMm }) => row(`Support ${number}`, xMm)),
    row("Tube, left end", lift.tube.fromMm),
    row("Tube, right end", lift.tube.toMm),
  ]);
}

/** Drives that stood before it and do not do. */
function refused({ book, shade }: TubeContext): void {
  const { refusedDrives } = shade.lift;
  if (refusedDrives === undefined || refusedDrives.length === 0) return;
  table(book, {
    heading: "Drives that were refused",
    title: "Drives that were refused, and why",
    columns: [
      { title: "Drive", share: 1 },
      { title: "Why", share: 3 },
    ],
    rows: refusedDrives.map(({ driveName, reason }): CellLike[] => [
      { text: driveName, strong: true },
      `It ${reason}.`,
    ]),
  });
}
