import { boardMarks, type CleatLift, fromBoardEndMm, type Lift } from "../../../shade-plan/index.ts";
import { forceText, massLimitText, nearestMark, trimmed } from "../../../units/index.ts";
import {
  isLockContext,
  isTubeContext,
  type LockContext,
  type ShadeContext,
  type TubeContext,
} from "../../shade-context.ts";
import type { Book } from "../../typeset/book.ts";
import { drawCordSwatch, SWATCH_WIDTH } from "../../typeset/cord-swatch.ts";
import { figure, figureBeside, layFigure } from "../../typeset/figure.ts";
import { openPage } from "../../typeset/heading.ts";
import type { PageLook } from "../../typeset/look.ts";
import { columns, type Span } from "../../typeset/paper.ts";
import { paragraph, paragraphsHeight } from "../../typeset/paragraph.ts";
import { besideHeight, table, tablesBeside } from "../../typeset/table.ts";
import type { CellLike, TableSpec } from "../../typeset/table-spec.ts";
import { drawTickBox, TICK_BOX_PT } from "../../typeset/tick-box.ts";
import { tickCell } from "../../typeset/tick-cell.ts";

const BOARD_PT = 120;
const LEAST_LIFT_PT = 70;
const MOST_LIFT_PT = 240;
/** With its caption on a sheet of its own, and the white about it. */
const CAPTION_PT = 40;
/** White over and under the words of a list that is to stand close. */
const CLOSE_PT = 1.25;
const AFTER_NOTE_PT = 3;
/** For want of height a lift is drawn no smaller than this share of what its width allows. */
const LEAST_SHARE = 0.7;
/** What is drawn of two cords in a lock, and the white between them that tells them apart, mm of paper. */
const CORDS_APART_MM = 1.1;

const TITLES = {
  lock: "Board, lock and threading",
  cleat: "Board, last eye and cords",
  tube: "Board, tube and cords",
} as const;
const LIFT_TITLES = {
  lock: "Lock and threading",
  cleat: "Last eye and cords",
  tube: "Tube and cords",
} as const;
const FROM_BELOW = "Drawn from below, room edge at the top, left as seen from the room.";

/** How all of it may stand on one sheet: columns of the drawing beside its notes, and whether the lists stand close. */
interface Way {
  figureColumns: number;
  isClose?: true;
}

/** A lock is drawn large; beside a tube more is to be said. */
const WAYS: Record<Lift["takeUp"], readonly Way[]> = {
  lock: [{ figureColumns: 7 }, { figureColumns: 8 }, { figureColumns: 8, isClose: true }],
  cleat: [{ figureColumns: 5 }, { figureColumns: 5, isClose: true }],
  tube: [{ figureColumns: 5 }, { figureColumns: 5, isClose: true }],
};

/**
 * Board, lock or tube, and cords: what is drilled where, how long each cord is cut, and how it is threaded. Where the lift
 * would be drawn too small under the lists, or its notes fall off the sheet, it stands with its cords on a sheet of its own.
 */
export function rigPage(context: ShadeContext): void {
  const { book, shade } = context;
  const { takeUp } = shade.lift;
  openPage(book, { title: TITLES[takeUp], lead: FROM_BELOW });
  figure(book, context.sheet("board"), BOARD_PT, false);
  const way = WAYS[takeUp].find((one) => isReadable(context, one));
  if (way === undefined) {
    placesInHalves(context);
    liftSheet(context);
    return;
  }
  const { left, right } = lists(context, way);
  book.withLook(lookOf(book, way), () => tablesBeside(book, left, right));
  figureBeside(book, context.sheet("lock"), { ...way, ...liftPlace(context, book.room) }, (right) =>
    setNotes(context, right),
  );
}

function lookOf({ look }: Book, { isClose }: Pick<Way, "isClose">): PageLook {
  return isClose === true ? { ...look, cellPadPt: CLOSE_PT } : look;
}

function lists(context: ShadeContext, { isClose }: Way): { left: TableSpec[]; right: TableSpec[] } {
  return { left: [places(context)], right: [cordList(context, isClose === true)] };
}

/** Lock and tube are seen as the board is; a cleat is seen from the room. */
function liftPlace({ shade }: ShadeContext, roomPt: number): { maxHeight: number; isCaptioned: boolean } {
  return {
    maxHeight: Math.max(LEAST_LIFT_PT, Math.min(MOST_LIFT_PT, roomPt)),
    isCaptioned: shade.lift.takeUp === "cleat",
  };
}

/** Board, lists, lift and notes end on this sheet, and of the lift all is seen that is to be. */
function isReadable(context: ShadeContext, way: Way): boolean {
  const { book } = context;
  const { left, right } = lists(context, way);
  const roomPt = book.room - book.withLook(lookOf(book, way), () => besideHeight(book, left, right));
  const beside = columns(book.paper, way.figureColumns, 12 - way.figureColumns).width;
  if (roomPt < Math.max(LEAST_LIFT_PT, paragraphsHeight(book, notes(context), beside, AFTER_NOTE_PT)))
    return false;
  const { width } = columns(book.paper, 0, way.figureColumns);
  const drawn = (mostPt: number) => {
    const { maxHeight, isCaptioned } = liftPlace(context, mostPt);
    return layFigure(book, context.sheet("lock"), width, maxHeight, isCaptioned);
  };
  const one = drawn(roomPt);
  if (one.heightPt > roomPt || one.zoom < 1) return false;
  if (isLockContext(context)) return nearestCordsMm(context) * one.placed.scale >= CORDS_APART_MM;
  return one.placed.scale >= LEAST_SHARE * drawn(MOST_LIFT_PT).placed.scale;
}

/** From middle to middle of the two cords that come down between the rollers nearest to each other, mm. */
function nearestCordsMm({ shade }: LockContext): number {
  const places = shade.lift.cords.map(({ path }) => path.at(-1)?.zMm ?? 0).sort((a, b) => a - b);
  return Math.min(...places.slice(1).map((zMm, i) => zMm - (places[i] ?? 0)));
}

/** What is fixed to the board, on a sheet without the lift: in two halves, the left one first. */
function placesInHalves(context: ShadeContext): void {
  const all = places(context);
  const half = Math.ceil(all.rows.length / 2);
  tablesBeside(
    context.book,
    [{ ...all, rows: all.rows.slice(0, half) }],
    [{ ...all, heading: "and on to its right end", rows: all.rows.slice(half) }],
  );
}

/** The lift as large as its cords leave room for, its notes and its cords. */
function liftSheet(context: ShadeContext): void {
  const { book, shade } = context;
  openPage(book, { title: LIFT_TITLES[shade.lift.takeUp] });
  const close = lookOf(book, { isClose: true });
  const cords = book.withLook(close, () => cordList(context, false));
  const listPt = book.withLook(close, () => besideHeight(book, [], [cords]));
  figure(book, context.sheet("lock"), liftPlace(context, book.room - listPt - CAPTION_PT).maxHeight);
  const { y: top, pageCount: page } = book;
  setNotes(context, columns(book.paper, 0, 6));
  const { y: end } = book;
  book.y = top;
  book.withLook(close, () => table(book, { ...cords, ...columns(book.paper, 6, 6) }));
  if (book.pageCount === page) book.y = Math.max(book.y, end);
}

function setNotes(context: ShadeContext, span: Span): void {
  for (const words of notes(context)) paragraph(context.book, words, { ...span, after: AFTER_NOTE_PT });
}

/** Everything of the lift that is screwed to the board, from its left end to its right. */
function places({ book, shade, length }: ShadeContext): TableSpec {
  const all = boardMarks(shade).sort((a, b) => a.xMm - b.xMm);
  return {
    heading: "From the board’s left end",
    title: "Places on the board from its left end",
    columns: [
      { title: "", share: 1.2 },
      { title: "", share: 1, align: "measure" },
    ],
    rows: all.map(({ name, xMm }): CellLike[] => [
      tickCell(book, name),
      { text: length(fromBoardEndMm(shade, xMm)), strong: true },
    ]),
  };
}

const CORD_COLUMN = { lock: "Slot, from", cleat: "Own eye", tube: "Spool" } as const;

/** Each cord with the length to cut, in the order of threading where there is a lock. */
function cordList(context: ShadeContext, isBrief: boolean): TableSpec {
  const { shade, length } = context;
  const { lift } = shade;
  const rows = isLockContext(context)
    ? context.shade.lift.threading.flatMap((number): CellLike[][] => {
        const cord = context.shade.lift.cords.find((one) => one.number === number);
        if (cord === undefined) return [];
        const into = `${cord.slot}, ${cord.entersFrom}`;
        return [[cordCell(context, number), { text: length(cord.cutMm), strong: true }, into]];
      })
    : lift.cords.map((cord): CellLike[] => [
        cordCell(context, cord.number),
        { text: length(cord.cutMm), strong: true },
        String(cord.number),
      ]);
  return {
    heading: isLockContext(context) ? "Cords, in the order of threading" : "Cords",
    title: "Cords with the length to cut, and where each one goes",
    columns: [
      { title: "", share: 1.4 },
      { title: "Cut", share: 1.25, align: "measure" },
      { title: CORD_COLUMN[lift.takeUp], share: 0.95 },
    ],
    rows,
    intro: isLockContext(context)
      ? `Slots count from the wall.${isBrief ? "" : " In this order no cord passes over one that is in."}`
      : "Number each cord before it is strung.",
  };
}

function cordCell({ book }: ShadeContext, number: number): CellLike {
  const tick = TICK_BOX_PT + 7;
  return {
    text: String(number),
    sign: {
      widthPt: tick + SWATCH_WIDTH,
      draw: (x, y) => {
        drawTickBox(book.pen, x, y);
        drawCordSwatch(book.pen, number, x + tick, y);
      },
    },
  };
}

function notes(context: ShadeContext): string[] {
  const { plan, shade, length } = context;
  const { board, lift } = shade;
  const [eye] = board.eyes;
  const from = board.screwsZMm === undefined ? "" : `, ${length(board.screwsZMm)} from the wall edge`;
  return [
    nearestMark(board.leftMm, plan.units.ruler) === 0
      ? "Left end level with the left finished edge."
      : `Left end ${length(board.leftMm)} inside the left finished edge.`,
    ...(eye === undefined ? [] : [`Eyes ${length(eye.zMm)} from the wall edge.`]),
    ...(isLockContext(context) ? lockNotes(context) : []),
    ...(isTubeContext(context) ? tubeNotes(context) : []),
    ...(lift.takeUp === "cleat" ? cleatNotes(context, lift) : []),
    `Screws: ${board.screws.count}, ${length(board.screws.lengthMm)} long, into ${board.screws.into}${from}.`,
  ];
}

function lockNotes({ shade, length }: LockContext): string[] {
  const { seat, lockName } = shade.lift;
  return [
    `${lockName}: middle ${length(seat.zMm)} from the wall edge, toothed roller to the ${seat.facing}.`,
  ];
}

function cleatNotes({ plan, length }: ShadeContext, lift: CleatLift): string[] {
  const { turn, tailLoweredMm, toCleatMm, holdN } = lift;
  return [
    `${turn.name}, the last eye${turn.column === undefined ? "" : `, above column ${turn.column}`}: all cords turn down over it.`,
    `Cords ${length(tailLoweredMm)} below it with the shade down.`,
    ...(toCleatMm === undefined ? [] : [`Cleat ${length(toCleatMm)} straight below it.`]),
    `Raised, the cleat holds ${forceText(holdN, plan.units)}.`,
  ];
}

function tubeNotes({ shade, plan, length }: TubeContext): string[] {
  const { tube, drive, wrapsLeft } = shade.lift;
  return [
    `${tube.name}: axis ${length(tube.axisMm)} under the board, ${length(tube.zMm)} from the wall edge.`,
    `${drive.name}${drive.massMaxKg === undefined ? "" : `, for shades up to ${massLimitText(drive.massMaxKg, plan.units, "most")}`}.`,
    `With the shade down ${trimmed(wrapsLeft, 0)} turns stay on each spool.`,
  ];
}
