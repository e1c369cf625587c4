import type { Drawing, Fact, Point, Primitive } from "../model.ts";
import { line, measure, movedOnPaper, name, note, rect } from "./shapes.ts";
import { figure, lengthFact, type SheetInput } from "./sheet-input.ts";

const RING_MM = 2.3;
/** From one figure to the next: measures and a name stand between, mm on paper. */
const BELOW_PAPER_MM = 34;

/** The back laid flat: every point to mark, rows from the hem up, columns from the edge that is left from the room. */
export function drawMarking(input: SheetInput): Drawing {
  const { shade, units } = input;
  const { grid } = shade;
  return {
    id: "marking",
    title: "Marking",
    caption:
      "The back laid flat, hemmed, before it goes on the board. What is left from the room lies on the right here. Mark rows from the hem up at both edges and in the middle.",
    primitives: [...drawFlat(input), ...drawPoints(input), ...drawMeasures(input), ...drawPockets(input)],
    facts: [
      ...grid.rows.map((row) => lengthFact(`Row ${row.number} above the hem`, row.fromHemMm, units)),
      ...grid.columns.map((column) =>
        lengthFact(`Column ${column.number} from the left edge seen from the room`, column.xMm, units),
      ),
      ...pocketFacts(input),
      { label: "Rings", text: String(grid.rows.length * grid.columns.length) },
    ],
  };
}

function pocketFacts({ shade, units }: SheetInput): Fact[] {
  return shade.cloth.ribLines.map((rib) =>
    lengthFact(`Pocket line ${rib.row} on the flat lining, above the hem`, rib.onLiningMm, units),
  );
}

function backRole({ shade }: SheetInput) {
  return shade.cloth.layers.some((cut) => cut.layer === "lining") ? "liningCloth" : "wrongSide";
}

function boardAllowanceMm({ shade }: SheetInput): number {
  const face = shade.cloth.layers.find((cut) => cut.layer === "face");
  return face?.makeUp.find((part) => part.label === "board")?.lengthMm ?? shade.board.depthMm;
}

function drawFlat(input: SheetInput): Primitive[] {
  const { finishedWidthMm: width, finishedLengthMm: length } = input.shade.size;
  const beyond = boardAllowanceMm(input);
  const role = backRole(input);
  return [
    rect(role, { x: 0, y: -beyond, width, height: length + beyond }),
    line("finishedEdge", [
      [0, -beyond],
      [0, length],
      [width, length],
      [width, -beyond],
    ]),
    line("cut", [
      [0, -beyond],
      [width, -beyond],
    ]),
    line(
      "markLine",
      [
        [0, 0],
        [width, 0],
      ],
      { part: "top-line" },
    ),
    note([width / 2, 0], "top line", {
      shiftPaperMm: [0, 2.4],
      ground: role,
      yields: true,
    }),
    note([0, length], "hem", { anchor: "end", shiftPaperMm: [-9, 0], yields: true }),
  ];
}

function drawPoints(input: SheetInput): Primitive[] {
  const { grid, size } = input.shade;
  const width = size.finishedWidthMm;
  return grid.rows.flatMap((row): Primitive[] => [
    line(
      "fold",
      [
        [0, row.yMm],
        [width, row.yMm],
      ],
      { part: `row-${row.number}` },
    ),
    ...grid.columns.map(
      (column): Primitive => ({
        kind: "marker",
        role: "ring",
        shape: "ring",
        at: [width - column.xMm, row.yMm],
        paperMm: RING_MM,
        part: `ring-${row.number}-${column.number}`,
      }),
    ),
    note([width, row.yMm], `row ${row.number}`, { anchor: "start", shiftPaperMm: [2, 0], yields: true }),
  ]);
}

function drawMeasures(input: SheetInput): Primitive[] {
  const { shade, units } = input;
  const { finishedWidthMm: width, finishedLengthMm: length } = shade.size;
  const up = (yMm: number, rest: Record<string, string>) =>
    measure({ from: [0, length], to: [0, yMm], offset: 7, running: "rows", ...rest }, units);
  const over = (xMm: number, rest: Record<string, string>) =>
    measure(
      { from: [width, length], to: [width - xMm, length], offset: 7, running: "columns", ...rest },
      units,
    );
  const beyond = boardAllowanceMm(input);
  return [
    ...shade.grid.rows.map((row) => up(row.yMm, { part: `row-${row.number}` })),
    up(0, { part: "top-line", ...figure(input, "measure.finished-length") }),
    ...shade.grid.columns.map((column) =>
      over(column.xMm, { part: `column-${column.number}`, ...figure(input, "shape.column-spacing") }),
    ),
    measure(
      {
        from: [0, -beyond],
        to: [width, -beyond],
        offset: 6,
        ...figure(input, "measure.finished-width"),
      },
      units,
    ),
    measure({ from: [width, -beyond], to: [width, 0], offset: 5, label: "board", part: "board" }, units),
  ];
}

/** With ribs the lining is marked before its pockets are sewn: a second figure below the first. */
function drawPockets(input: SheetInput): Primitive[] {
  const { shade, units } = input;
  const { ribLines } = shade.cloth;
  const takeUpMm = Math.max(0, ...ribLines.map((rib) => rib.onLiningMm - rib.fromHemMm));
  if (takeUpMm < 1e-6) return [];
  const { finishedWidthMm: width, finishedLengthMm: length } = shade.size;
  const tallest = length + takeUpMm + boardAllowanceMm(input);
  const hem = length + tallest;
  const role = backRole(input);
  const across = (y: number): Point[] => [
    [0, y],
    [width, y],
  ];
  const figure: Primitive[] = [
    rect(role, { x: 0, y: hem - tallest, width, height: tallest }),
    line("finishedEdge", [[0, hem - tallest], ...across(hem), [width, hem - tallest]]),
    ...ribLines.flatMap((rib) => [
      line("stitch", across(hem - rib.onLiningMm), { part: `rib-${rib.row}` }),
      note([width, hem - rib.onLiningMm], `pocket ${rib.row}`, {
        anchor: "start",
        shiftPaperMm: [2, 0],
        yields: true,
      }),
      measure(
        {
          from: [0, hem],
          to: [0, hem - rib.onLiningMm],
          offset: 7,
          running: "pockets",
          part: `rib-${rib.row}`,
        },
        units,
      ),
    ]),
    name([width / 2, hem - tallest], "Pocket lines, before sewing", { shiftPaperMm: [0, -3] }),
    note([0, hem], "hem", { anchor: "end", shiftPaperMm: [-9, 0], yields: true }),
  ];
  return movedOnPaper(figure, [0, BELOW_PAPER_MM]);
}
