import { boardMarks, type CleatLift, fromBoardEndMm } from "../../../shade-plan/index.ts";
import { forceText, massText, nearestMark, trimmed } from "../../../units/index.ts";
import {
  isLockContext,
  isTubeContext,
  type LockContext,
  type ShadeContext,
  type TubeContext,
} from "../../shade-context.ts";
import { drawCordSwatch, SWATCH_WIDTH } from "../../typeset/cord-swatch.ts";
import { figure, figureBeside } from "../../typeset/figure.ts";
import { openPage } from "../../typeset/heading.ts";
import { paragraph } from "../../typeset/paragraph.ts";
import { tablesBeside } from "../../typeset/table.ts";
import type { CellLike, TableSpec } from "../../typeset/table-spec.ts";
import { drawTickBox, TICK_BOX_PT } from "../../typeset/tick-box.ts";
import { tickCell } from "../../typeset/tick-cell.ts";

const BOARD_PT = 120;
const LEAST_LIFT_PT = 110;
const MOST_LIFT_PT = 240;
/** A lock is drawn large; beside a tube more is to be said. */
const LIFT_COLUMNS = { lock: 7, cleat: 5, tube: 5 };
const TITLES = {
  lock: "Board, lock and threading",
  cleat: "Board, last eye and cords",
  tube: "Board, tube and cords",
} as const;

/** Board, lock or tube, and cords: what is drilled where, how long each cord is cut, and how it is threaded. */
export function rigPage(context: ShadeContext): void {
  const { book, shade } = context;
  openPage(book, {
    title: TITLES[shade.lift.takeUp],
    lead: "Drawn from below. Measure from the left end of the board, left as seen from the room.",
  });
  figure(book, context.sheet("board"), BOARD_PT);
  tablesBeside(book, [places(context)], [cordList(context)]);
  const split = {
    figureColumns: LIFT_COLUMNS[shade.lift.takeUp],
    maxHeight: Math.max(LEAST_LIFT_PT, Math.min(MOST_LIFT_PT, book.room - 40)),
  };
  figureBeside(book, context.sheet("lock"), split, (right) => {
    for (const words of notes(context)) paragraph(book, words, { ...right, after: 3 });
  });
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
function cordList(context: ShadeContext): TableSpec {
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
      ? "Slots count from the wall. In this order no cord passes over one that is in."
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
    `${drive.name}${drive.massMaxKg === undefined ? "" : `, for shades up to ${massText(drive.massMaxKg, plan.units)}`}.`,
    `With the shade down ${trimmed(wrapsLeft, 0)} turns stay on each spool.`,
  ];
}
