import { headYMm, type Lift } from "../../shade-plan/index.ts";
import { type RaisedShape, slantOf, type VisibleShape } from "../../styles/index.ts";
import type { Drawing, Fact, Point, Primitive } from "../model.ts";
import { type DrawnCord, drawCords, laneStepMm } from "./back-cords.ts";
import { boardLine } from "./board-line.ts";
import { tubeControl } from "./hanging-control.ts";
import { knob, tailEndYMm } from "./hanging-tail.ts";
import {
  type CleatSheetInput,
  isCleatSheet,
  isLockSheet,
  isTubeSheet,
  type LockSheetInput,
  type TubeSheetInput,
} from "./lift-input.ts";
import { ringMarks, ringWords } from "./ring-marks.ts";
import { rowFacts } from "./row-facts.ts";
import { shapeNow } from "./shape-now.ts";
import { callout, cordTag, dimensionOf, line, note, rect } from "./shapes.ts";
import { figureRef, lengthFact, raiseName, type SheetInput } from "./sheet-input.ts";
import { axisYMm, tubeCords, tubeElevation } from "./tube-elevation.ts";
import { drawVisibleLine, seenFrom } from "./visible-lines.ts";

const BAR_FACE_MM = 19;
const RIB_FACE_MM = 7;
/** Half the width of a woven sleeve as drawn. */
const WOVEN_HALF_MM = 5;
/** Rows nearer than this leave no room for words between them. */
const APART_MM = 60;

/** The shade seen from behind, with the whole rig: rings, cords, eyes, lock, ribs and bar. */
export function drawBack(input: SheetInput): Drawing {
  const { shade, units, raise } = input;
  const { size, grid, lift } = shade;
  const visible = shapeNow(input);
  const shape = visible.section;
  const { id, words } = raiseName(raise);
  const across = (xMm: number) => size.finishedWidthMm - xMm;
  const slant = slantOf(shade, shape) ?? ((_: number, yMm: number) => yMm);
  return {
    id: `back${id}`,
    title: "Back and rig",
    caption: `Seen from the back: what is left from the room lies on the right here, and columns are measured from there. ${words}.${ringWords(shape.rows, grid.columns)}`,
    primitives: [
      ...drawLining(input, visible, across),
      ...drawBarAndRibs(input, shape, across),
      ...drawBoard(input, across),
      ...drawSleeves(input, across, shape),
      ...ringMarks(
        shape.rows.map(({ number, yMm }) => ({ number, mm: yMm })),
        grid.columns.map(({ number, xMm }) => ({ number, mm: across(xMm) })),
      ).map((ring) => ({ ...ring, at: [ring.at[0], slant(across(ring.at[0]), ring.at[1])] as Point })),
      ...(isLockSheet(input) ? drawLockRig(input, across, shape) : []),
      ...(isCleatSheet(input) ? drawCleatRig(input, across, shape) : []),
      ...(isTubeSheet(input) ? drawTubeRig(input, across, shape) : []),
      ...drawMeasures(input, visible, across),
    ],
    facts: [
      ...grid.rows.flatMap((row) => rowFacts(row, units)),
      ...grid.columns.map((column) =>
        lengthFact(`Column ${column.number} from the left edge seen from the room`, column.xMm, units),
      ),
      ...cordFacts(lift),
    ],
  };
}

function cordFacts(lift: Lift): Fact[] {
  if (lift.takeUp === "cleat") {
    return lift.cords.map((cord) => ({
      label: `Cord ${cord.number}`,
      text: `column ${cord.number}, along the board over eyes ${cord.eyes.join(", ")} and the last one`,
    }));
  }
  if (lift.takeUp === "lock") {
    return lift.cords.map((cord) => ({
      label: `Cord ${cord.number}`,
      text: `column ${cord.number}, enters the lock from the ${cord.entersFrom} seen from the room, slot ${cord.slot}`,
    }));
  }
  return lift.cords.map((cord) => ({
    label: `Cord ${cord.number}`,
    text: `column ${cord.number}, straight up to spool ${cord.number}`,
  }));
}

/** Height of the bottom ring of a column as the shade hangs now. */
function bottomRingsOf({ shade }: SheetInput, shape: RaisedShape): (xMm: number) => number {
  const slant = slantOf(shade, shape);
  const yMm = shape.rows[0]?.yMm ?? 0;
  return (xMm) => slant?.(xMm, yMm) ?? yMm;
}

function drawLockRig(input: LockSheetInput, across: (x: number) => number, shape: RaisedShape): Primitive[] {
  const cords = drawCords(input, across, bottomRingsOf(input, shape));
  return [
    ...drawCordLines(cords),
    ...drawEyes(input, across, cords),
    ...drawLock(input, across, cords, shape),
  ];
}

/** Without a lock the cords meet at the last eye and hang below it together. */
function drawCleatRig(
  input: CleatSheetInput,
  across: (x: number) => number,
  shape: RaisedShape,
): Primitive[] {
  const { lift, board, size } = input.shade;
  const cords = drawCords(input, across, bottomRingsOf(input, shape));
  const x = across(lift.turn.xMm);
  const end = tailEndYMm(input, input.raise);
  const top = headYMm(size, lift.turn.xMm) + board.thicknessMm;
  const lowest =
    top + Math.max(lift.turn.diameterMm, ...cords.map(({ laneMm }) => laneMm - board.thicknessMm));
  const inward = x > size.finishedWidthMm / 2 ? -1 : 1;
  const from = (top: number, bottom: number): Point[] => [
    [x, top],
    [x, bottom],
  ];
  return [
    ...drawCordLines(cords),
    ...drawEyes(input, across, cords),
    line("eye", from(top, lowest + 3), { part: "last-eye" }),
    line("cord", from(lowest, end), { part: "tail" }),
    knob(x, end),
    callout([x, top + 8], "last eye", [inward * 4, -9], { part: "last-eye" }),
    callout([x, betweenRows(shape, (lowest + end) / 2)], "cords together", [inward * 3, 0], {
      part: "tail",
      yields: true,
    }),
  ];
}

/** Cords straight up to their spools; loop or wand in front of the cloth from here, since one looks from behind. */
function drawTubeRig(input: TubeSheetInput, across: (x: number) => number, shape: RaisedShape): Primitive[] {
  const { lift, size } = input.shade;
  const driveX = across(lift.drive.xMm);
  const inward = driveX > size.finishedWidthMm / 2 ? -1 : 1;
  return [
    // Measures stand on the left of the back too.
    ...tubeControl(input, across, { side: 1 }),
    ...tubeCords(input, across, bottomRingsOf(input, shape)),
    ...tubeElevation(input, across),
    ...lift.cords.map(
      (cord): Primitive => ({
        ...cordTag([across(cord.columnX), 0], cord.number, [0, -4]),
        stack: "columns",
      }),
    ),
    callout([driveX, axisYMm(input, lift.drive.xMm)], "drive", [inward * 6, 9], { part: "drive" }),
  ];
}

/** Sleeves stand over rings and cords where those are enclosed, and run with the cords where rings grip them. */
function drawSleeves({ shade }: SheetInput, across: (x: number) => number, shape: RaisedShape): Primitive[] {
  const { cloth, lift, grid, board } = shade;
  const half = cloth.sleeves?.besideMm ?? (lift.wovenSleeves === undefined ? 0 : WOVEN_HALF_MM);
  if (half === 0) return [];
  const top = board.thicknessMm;
  const bottom = Math.max(top, shape.rows[0]?.yMm ?? top);
  return grid.columns.map((column) =>
    rect(
      "sleeve",
      { x: across(column.xMm) - half, y: top, width: 2 * half, height: bottom - top },
      { part: `sleeve-${column.number}` },
    ),
  );
}

/** The same pieces seen from behind: what is in front for the room comes first here, the hem section last. */
function drawLining(
  { shade }: SheetInput,
  { pieces, lines, section }: VisibleShape,
  across: (x: number) => number,
): Primitive[] {
  const isLined = shade.cloth.layers.some((cut) => cut.layer === "lining");
  const turn = ([x, y]: Point): Point => [across(x), y];
  const moving = new Set(section.folds.filter(({ state }) => state !== "flat").map(({ row }) => row));
  return [
    ...[...pieces]
      .reverse()
      .flatMap(({ outline, edges }): Primitive[] => [
        line(isLined ? "liningCloth" : "wrongSide", outline.map(turn), { closed: true }),
        ...edges
          .filter(seenFrom("back"))
          .map((edge) =>
            edge.row === undefined
              ? { ...drawVisibleLine(edge, turn), part: "hem" }
              : drawVisibleLine(
                  moving.has(edge.row) && edge.kind === "fold" ? { ...edge, kind: "edge" } : edge,
                  turn,
                ),
          ),
      ]),
    ...lines.filter(seenFrom("back")).map((one) => drawVisibleLine(one, turn)),
  ];
}

function drawBarAndRibs(
  { shade }: SheetInput,
  shape: RaisedShape,
  across: (x: number) => number,
): Primitive[] {
  const width = shade.size.finishedWidthMm;
  const { bar } = shade.form;
  const { ribLengthMm, ribLines } = shade.cloth;
  const primitives: Primitive[] = [];
  const slant = slantOf(shade, shape);
  // A rod follows its row, and a bar its hem.
  const along = (one: ReturnType<typeof rect>, lineYMm: number) =>
    slant === undefined
      ? one
      : { ...one, points: one.points.map(([x, y]): Point => [x, y + slant(across(x), lineYMm) - lineYMm]) };
  if (ribLengthMm !== undefined) {
    const ribbed = new Set(ribLines.map((rib) => rib.row));
    const role = shade.form.ribs.face === "front" ? "hidden" : "rib";
    for (const row of shape.rows.filter((one) => ribbed.has(one.number)))
      primitives.push(
        along(
          rect(
            role,
            {
              x: (width - ribLengthMm) / 2,
              y: row.yMm - RIB_FACE_MM / 2,
              width: ribLengthMm,
              height: RIB_FACE_MM,
            },
            { part: `rib-${row.number}` },
          ),
          row.yMm,
        ),
      );
  }
  if (bar !== undefined) {
    const x = across(bar.toMm);
    const barLengthMm = bar.toMm - bar.fromMm;
    const y = shape.hemYMm - BAR_FACE_MM - 4;
    const barAt = (barX: number, barY: number): Point => [
      barX,
      barY + (slant === undefined ? 0 : slant(across(barX), shape.hemYMm) - shape.hemYMm),
    ];
    primitives.push(
      along(rect("bar", { x, y, width: barLengthMm, height: BAR_FACE_MM }, { part: "bar" }), shape.hemYMm),
      callout(barAt(x + barLengthMm - 6, y + BAR_FACE_MM / 2), "weight bar", [4.5, 3.5], {
        part: "bar",
        yields: true,
      }),
    );
  }
  return primitives;
}

/** Level, or along the head. */
function drawBoard({ shade }: SheetInput, across: (x: number) => number): Primitive[] {
  const upper = boardLine(shade);
  const lower = [...upper].reverse().map(([x, y]): Point => [x, y + shade.board.thicknessMm]);
  return [
    line(
      "board",
      [...upper, ...lower].map(([x, y]): Point => [across(x), y]),
      { closed: true, part: "board" },
    ),
  ];
}

/** Eyes are seen edge on from here: narrow loops below the board with the cords behind them. */
function drawEyes(input: SheetInput, across: (x: number) => number, cords: DrawnCord[]): Primitive[] {
  const { board, size } = input.shade;
  const half = laneStepMm(input) * 0.3;
  const { thicknessMm } = board;
  const reachMm = Math.max(...cords.map(({ laneMm }) => laneMm - thicknessMm), 8) + 2 * half;
  return board.eyes.map((eye, i): Primitive => {
    const x = across(eye.xMm);
    const top = headYMm(size, eye.xMm) + thicknessMm;
    const bottom = top + reachMm;
    return {
      kind: "polyline",
      role: "eye",
      closed: true,
      part: `eye-${i + 1}`,
      points: [
        [x - half, top],
        [x + half, top],
        [x + half, bottom - half],
        [x, bottom],
        [x - half, bottom - half],
      ],
    };
  });
}

function drawCordLines(cords: DrawnCord[]): Primitive[] {
  return cords.flatMap((cord) => {
    const foot: Point = [cord.points[0]?.[0] ?? 0, 0];
    return [
      line("cord", cord.points, { cord: cord.number, part: `cord-${cord.number}` }),
      { ...cordTag(foot, cord.number, [0, -4]), stack: "columns" },
    ];
  });
}

/** The middle between two rows that is nearest to a height: words there stand clear of the rings. */
function betweenRows(shape: RaisedShape, wishYMm: number): number {
  const ys = shape.rows.map((row) => row.yMm);
  const middles = ys.slice(1).flatMap((y, i) => {
    const below = ys[i] ?? y;
    return below - y > APART_MM ? [(y + below) / 2] : [];
  });
  const away = (y: number) => Math.abs(y - wishYMm);
  return middles.reduce((best, y) => (away(y) < away(best) ? y : best), middles[0] ?? wishYMm);
}

/** The lock hides the turn of its cords; below it they hang together. */
function drawLock(
  input: LockSheetInput,
  across: (x: number) => number,
  cords: DrawnCord[],
  shape: RaisedShape,
): Primitive[] {
  const { lift, board, size } = input.shade;
  const top = headYMm(size, lift.seat.xMm) + board.thicknessMm;
  const lowest =
    top + Math.max(lift.housingHeightMm, ...cords.map(({ laneMm }) => laneMm + 4 - board.thicknessMm));
  const x = across(lift.seat.xMm);
  const end = tailEndYMm(input, input.raise);
  const inward = x > size.finishedWidthMm / 2 ? -1 : 1;
  return [
    line(
      "cord",
      [
        [x, lowest],
        [x, end],
      ],
      { part: "tail" },
    ),
    knob(x, end),
    rect(
      "housing",
      {
        x: x - lift.housingLengthMm / 2,
        y: top,
        width: lift.housingLengthMm,
        height: lowest - top,
      },
      { part: "lock" },
    ),
    callout([x, top + 8], "lock", [inward * 4, -9], { part: "lock" }),
    callout([x, betweenRows(shape, (lowest + end) / 2)], "cords together", [inward * 3, 0], {
      part: "tail",
      yields: true,
    }),
  ];
}

function drawMeasures(
  input: SheetInput,
  { section: shape, lowestYMm }: VisibleShape,
  across: (x: number) => number,
): Primitive[] {
  const { shade, units } = input;
  const width = shade.size.finishedWidthMm;
  const hem = lowestYMm ?? shape.hemYMm;
  const lowest = Math.max(hem, shape.bottomYMm);
  const slant = slantOf(shade, shape) ?? ((_: number, yMm: number) => yMm);
  const rows = shape.rows.map((row) =>
    dimensionOf(
      {
        from: [0, slant(across(0), hem)],
        to: [0, slant(across(0), row.yMm)],
        offset: 7,
        running: "rows",
        part: `row-${row.number}`,
      },
      units,
    ),
  );
  const isLowered = input.raise <= 0;
  return [
    ...(isLowered ? rows : []),
    dimensionOf(
      {
        from: [0, hem],
        to: [0, 0],
        offset: 7,
        ...(isLowered ? { running: "rows" } : {}),
        ...figureRef(input, isLowered ? "measure.finished-length" : "shape.raised-height"),
      },
      units,
    ),
    ...shade.grid.columns.map((column) =>
      dimensionOf(
        {
          from: [across(0), lowest],
          to: [across(column.xMm), lowest],
          offset: 7,
          running: "columns",
          part: `column-${column.number}`,
          ...figureRef(input, "shape.column-spacing"),
        },
        units,
      ),
    ),
    dimensionOf(
      { from: [0, 0], to: [width, 0], offset: 14, ...figureRef(input, "measure.finished-width") },
      units,
    ),
    note([0, hem], "hem", { anchor: "end", shiftPaperMm: [-9, 0], yields: true }),
    ...shape.rows.map((row) =>
      note([width, slant(across(width), row.yMm)], `row ${row.number}`, {
        anchor: "start",
        shiftPaperMm: [2, 0],
        yields: true,
      }),
    ),
  ];
}
