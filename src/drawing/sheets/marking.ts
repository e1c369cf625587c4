import {
  type ClothMark,
  columnFromEdge,
  hemInWords,
  hemYMm,
  type Row,
  ringCount,
  ringYMm,
  rowsAreDrawnUp,
  rowsToSew,
} from "../../shade-plan/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Drawing, Fact, Point, Primitive, Role } from "../model.ts";
import { flatFace, MARK_ROLES, marksAlong, plannedBoardAllowanceMm } from "./cloth-marks.ts";
import { cornerFacts, drawCorner } from "./hem-corner.ts";
import { ringMarks, ringWords } from "./ring-marks.ts";
import { rowFacts } from "./row-facts.ts";
import { drawShapedPanel, lowerEdge, panelFacts } from "./shaped-panel.ts";
import { dimensionOf, line, movedOnPaper, name, note, rect } from "./shapes.ts";
import { figureRef, lengthFact, type SheetInput } from "./sheet-input.ts";

/** From one figure to the next: measures and a name stand between, mm on paper. */
const BELOW_PAPER_MM = 34;

/** What the flat cloth is marked for, over its figure. */
const MARKED_BEFORE: Record<ClothMark["kind"], string> = {
  pleat: "The face laid flat, before pleating",
  "pleat-centre": "The face laid flat, before pleating",
  tuck: "Fold lines of the tucks, before sewing",
  tape: "Marks for the tapes, on the cloth laid flat",
  gather: "The face laid flat, before gathering",
  row: "The face laid flat, before gathering",
  rib: "Lines for the ribs, before sewing",
};

/** The back laid flat: every point to mark, rows from the hem up, columns from the edge that is left from the room. */
export function drawMarking(input: SheetInput): Drawing {
  return drawMarks(input, input.shade.existing === undefined ? drawFlatLines(input, false) : []);
}

/** The same in two, for a sheet each: what is marked first on the flat cloth, where anything is, and the finished shade. */
export function drawMarkingApart(input: SheetInput): { flat?: Drawing; finished: Drawing } {
  const finished = drawMarks(input, []);
  if (input.shade.existing !== undefined) return { finished };
  const flat = drawFlatLines(input, true);
  if (flat.length === 0) return { finished };
  return {
    flat: {
      id: "marking-flat",
      title: "Marking the flat cloth",
      caption: "Laid flat, right side down: what is the left edge from the room lies at the right.",
      primitives: flat,
      facts: [...pocketFacts(input), ...markFacts(input)],
    },
    finished,
  };
}

/** Lines that are marked before pockets, pleats, tucks or gathers take up cloth. */
function drawFlatLines(input: SheetInput, alone: boolean): Primitive[] {
  return [...drawPockets(input, alone), ...drawClothMarks(input, alone)];
}

function drawMarks(input: SheetInput, flatLines: readonly Primitive[]): Drawing {
  const { shade, units } = input;
  const { grid } = shade;
  return {
    id: "marking",
    title: "Marking",
    caption: `${laidFlat(shade)} What is left from the room lies on the right here.${rowsToMark(shade)}${ringWords(grid.rows, grid.columns)}`,
    primitives: [
      ...drawFlat(input),
      ...drawPoints(input),
      ...drawMeasures(input),
      // Of a shade that hangs nothing but rings is sewn.
      ...(shade.existing === undefined
        ? [
            ...flatLines,
            ...movedOnPaper(drawShapedPanel(input, backRole(input), beyondMm(shade)), [0, BELOW_PAPER_MM]),
            ...drawSeams(input),
            ...drawCorners(input),
          ]
        : []),
    ],
    facts: [
      ...grid.rows.flatMap((row) => rowFacts(row, units)),
      ...grid.columns.map(({ number, xMm }) => {
        const { edge, mm } = columnFromEdge(shade, xMm);
        return lengthFact(`Column ${number} from the ${edge} edge seen from the room`, mm, units);
      }),
      ...(shade.existing === undefined
        ? [
            ...pocketFacts(input),
            ...markFacts(input),
            ...panelFacts(input),
            ...seamFacts(input),
            ...cornerFacts(input),
          ]
        : [{ label: "Rings to sew", text: String(shade.existing.takes.rings) }]),
      { label: "Rings", text: String(ringCount(grid, shade.form)) },
    ],
  };
}

/** One that hangs already has its own rings: those that are sewn now are drawn as points. */
function laidFlat(shade: SheetInput["shade"]): string {
  if (shade.existing !== undefined)
    return "The back of the shade, taken down and laid flat. Rings to sew are crossed; all others are there.";
  return rowsAreDrawnUp(shade)
    ? "The back, drawn up: where the rings come then. The flat cloth is marked by its own drawing."
    : "The back laid flat, hemmed, before it goes on the board.";
}

function rowsToMark(shade: SheetInput["shade"]): string {
  if (rowsAreDrawnUp(shade)) return "";
  return ` Mark rows from ${hemInWords(shade.form)} up at both edges${slants(shade.grid) ? ", and join the two marks" : " and in the middle"}.`;
}

/** Of one that slants its height at this edge as well: the other stands on the far side. */
function rowName({ number, ends }: Row, units: SheetInput["units"]): string {
  return ends === undefined ? `row ${number}` : `row ${number}, ${lengthText(ends.leftFromHemMm, units)}`;
}

/** Cloth above the top line: one that hangs stays on its board. */
function beyondMm(shade: SheetInput["shade"]): number {
  return shade.existing === undefined ? plannedBoardAllowanceMm(shade) : 0;
}

function slants({ rows }: SheetInput["shade"]["grid"]): boolean {
  return rows.some(({ ends }) => ends !== undefined);
}

function pocketFacts({ shade, units }: SheetInput): Fact[] {
  return shade.cloth.ribLines.map((rib, i) =>
    lengthFact(`Pocket line ${i + 1} on the flat lining, above the hem`, rib.onLiningMm, units),
  );
}

function markFacts({ shade, units }: SheetInput): Fact[] {
  return [
    ...marksAlong(shade, "y").map((mark) =>
      lengthFact(`${capital(mark.label)} on the flat face, above the hem`, mark.atMm, units),
    ),
    ...marksAlong(shade, "x").map((mark) =>
      lengthFact(
        `${capital(mark.label)} on the flat face, from the left edge seen from the room`,
        mark.atMm,
        units,
      ),
    ),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function backRole({ shade }: SheetInput) {
  return shade.cloth.layers.some((cut) => cut.layer === "lining") ? "liningCloth" : "wrongSide";
}

function drawFlat(input: SheetInput): Primitive[] {
  const { finishedWidthMm: width, finishedLengthMm: length } = input.shade.size;
  const beyond = beyondMm(input.shade);
  const role = backRole(input);
  const edges: Point[] = [[0, -beyond], ...lowerEdge(input), [width, -beyond]];
  return [
    input.shade.form.panel === undefined && input.shade.grid.hemFallMm === undefined
      ? rect(role, { x: 0, y: -beyond, width, height: length + beyond })
      : line(role, edges, { closed: true }),
    line("finishedEdge", edges),
    ...(beyond > 0
      ? [
          line("cut", [
            [0, -beyond],
            [width, -beyond],
          ]),
        ]
      : []),
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

/** Joins of the layer that is seen from behind, where it hangs as flat as the finished shade. */
function drawSeams({ shade }: SheetInput): Primitive[] {
  const { finishedWidthMm: width, finishedLengthMm: length } = shade.size;
  if (shade.form.across !== "flat") return [];
  return seamsBehind(shade).map((xMm, i) =>
    line(
      "seam",
      [
        [width - xMm, 0],
        [width - xMm, length],
      ],
      { part: `seam-${i + 1}` },
    ),
  );
}

function seamsBehind({ cloth }: SheetInput["shade"]): number[] {
  return (cloth.layers.find((cut) => cut.layer === "lining") ?? cloth.layers[0])?.seamsMm ?? [];
}

function seamFacts({ shade, units }: SheetInput): Fact[] {
  return seamsBehind(shade).map((xMm, i) =>
    lengthFact(`Join ${i + 1} from the left edge seen from the room`, xMm, units),
  );
}

/** The corner stands below everything else. */
function drawCorners(input: SheetInput): Primitive[] {
  const { shade } = input;
  const before = [
    shade.form.panel === undefined ? 0 : flatFace(shade).lengthMm,
    Math.max(0, ...shade.cloth.ribLines.map((rib) => rib.onLiningMm - rib.fromHemMm)) > 1e-6
      ? shade.size.finishedLengthMm
      : 0,
    shade.form.marks.length > 0 ? flatFace(shade).lengthMm : 0,
  ];
  const aboveMm = Math.max(...before) > 0 ? Math.max(...before) + 2 * beyondMm(input.shade) : 0;
  const paperMm = BELOW_PAPER_MM * (aboveMm > 0 ? 2 : 1);
  return movedOnPaper(drawCorner(input, shade.size.finishedLengthMm + aboveMm), [0, paperMm]);
}

function drawPoints(input: SheetInput): Primitive[] {
  const { grid, size } = input.shade;
  const width = size.finishedWidthMm;
  const rings = ringMarks(
    grid.rows.map(({ number, yMm }) => ({ number, mm: yMm })),
    grid.columns.map(({ number, xMm }) => ({ number, mm: width - xMm })),
  );
  const sewn = new Set(
    rowsToSew(grid, input.shade.existing).flatMap(({ row, columns }) =>
      columns.map(({ number }) => `ring-${row.number}-${number}`),
    ),
  );
  const isHung = input.shade.existing !== undefined;
  return grid.rows.flatMap((row): Primitive[] => {
    // Drawn from behind: what is left from the room lies on the right.
    const yAt = (drawnX: number) => ringYMm(row, width - drawnX, width);
    return [
      line(
        "fold",
        [
          [0, yAt(0)],
          [width, yAt(width)],
        ],
        { part: `row-${row.number}` },
      ),
      ...rings
        .filter(({ at }) => at[1] === row.yMm)
        .flatMap((ring): Primitive[] => {
          const at: Point = [ring.at[0], yAt(ring.at[0])];
          const isSewn = isHung && sewn.has(ring.part ?? "");
          return [
            { ...ring, at },
            ...(isSewn ? [{ ...ring, at, shape: "cross", part: `sew-${ring.part}` } as const] : []),
          ];
        }),
      note([width, yAt(width)], rowName(row, input.units), {
        anchor: "start",
        shiftPaperMm: [2, 0],
        yields: true,
        // Its number stands at the left in place of its measure.
        ...(row.ends === undefined ? { atDesk: true } : {}),
      }),
    ];
  });
}

function drawMeasures(input: SheetInput): Primitive[] {
  const { shade, units } = input;
  const { finishedWidthMm: width, finishedLengthMm: length } = shade.size;
  const up = (yMm: number, rest: Record<string, string>) =>
    dimensionOf(
      { from: [0, hemYMm(shade.grid, shade.size, width)], to: [0, yMm], offset: 7, running: "rows", ...rest },
      units,
    );
  const over = (xMm: number, rest: Record<string, string>) => {
    const { edge } = columnFromEdge(shade, xMm);
    // Below the hem from either side.
    const [fromX, offset] = edge === "left" ? [width, 7] : [0, -7];
    return dimensionOf(
      { from: [fromX, length], to: [width - xMm, length], offset, running: `columns-${edge}`, ...rest },
      units,
    );
  };
  const beyond = beyondMm(input.shade);
  return [
    // On the left of the drawing lies what is right from the room.
    ...shade.grid.rows.map((row) => up(ringYMm(row, width, width), { part: `row-${row.number}` })),
    up(0, { part: "top-line", ...figureRef(input, "measure.finished-length") }),
    ...shade.grid.columns.map((column) =>
      over(column.xMm, { part: `column-${column.number}`, ...figureRef(input, "shape.column-spacing") }),
    ),
    dimensionOf(
      {
        from: [0, -beyond],
        to: [width, -beyond],
        offset: 6,
        ...figureRef(input, "measure.finished-width"),
      },
      units,
    ),
    ...(beyond > 0
      ? [
          dimensionOf(
            { from: [width, -beyond], to: [width, 0], offset: 5, label: "board", part: "board" },
            units,
          ),
        ]
      : []),
  ];
}

/** With ribs the lining is marked before its pockets are sewn: a figure below the first. */
function drawPockets(input: SheetInput, alone: boolean): Primitive[] {
  const { ribLines } = input.shade.cloth;
  const takeUpMm = Math.max(0, ...ribLines.map((rib) => rib.onLiningMm - rib.fromHemMm));
  if (takeUpMm < 1e-6) return [];
  const { finishedWidthMm, finishedLengthMm } = input.shade.size;
  return drawBefore(input, {
    id: "pockets",
    alone,
    title: "Pocket lines, before sewing",
    widthMm: finishedWidthMm,
    lengthMm: finishedLengthMm + takeUpMm,
    up: ribLines.map((rib, i) => ({
      role: "stitch",
      atMm: rib.onLiningMm,
      label: `pocket ${i + 1}`,
      part: `rib-${rib.row}`,
    })),
    over: [],
  });
}

/** Lines that the style asks for on the flat face, before its pleats, tucks or gathers take any of it up. */
function drawClothMarks(input: SheetInput, alone: boolean): Primitive[] {
  const { shade } = input;
  const lines = (along: "x" | "y"): FlatLine[] =>
    marksAlong(shade, along).map(({ kind, atMm, label }, i) => ({
      role: MARK_ROLES[kind],
      atMm,
      label,
      part: `${kind}-${along}-${i + 1}`,
    }));
  const [up, over] = [lines("y"), lines("x")];
  if (up.length + over.length === 0) return [];
  return drawBefore(input, {
    id: "marks",
    alone,
    title: MARKED_BEFORE[shade.form.marks[0]?.kind ?? "row"],
    ...flatFace(shade),
    up,
    over,
  });
}

interface FlatLine {
  role: Role;
  atMm: number;
  label: string;
  part: string;
}

interface FlatFigure {
  id: string;
  /** On a sheet of its own, without a name over it. */
  alone: boolean;
  title: string;
  widthMm: number;
  lengthMm: number;
  /** Across, from the hem up; upright, from the edge that is left seen from the room. */
  up: FlatLine[];
  over: FlatLine[];
}

/** The back as it lies flat before something is sewn, centred below the finished shade where it has no sheet of its own. */
function drawBefore(
  input: SheetInput,
  { id, alone, title, widthMm, lengthMm, up, over }: FlatFigure,
): Primitive[] {
  const { shade, units } = input;
  const beyond = beyondMm(input.shade);
  const left = (shade.size.finishedWidthMm - widthMm) / 2;
  const right = left + widthMm;
  const topLine = shade.size.finishedLengthMm + beyond;
  const hem = topLine + lengthMm;
  const role = backRole(input);
  const across = (y: number): Point[] => [
    [left, y],
    [right, y],
  ];
  const figure: Primitive[] = [
    rect(role, { x: left, y: topLine - beyond, width: widthMm, height: lengthMm + beyond }),
    line("finishedEdge", [[left, topLine - beyond], ...across(hem), [right, topLine - beyond]]),
    line("markLine", across(topLine), { part: "top-line" }),
    ...up.flatMap(({ role: kind, atMm, label, part }): Primitive[] => [
      line(kind, across(hem - atMm), { part }),
      note([right, hem - atMm], label, { anchor: "start", shiftPaperMm: [2, 0], yields: true }),
      dimensionOf({ from: [left, hem], to: [left, hem - atMm], offset: 7, running: id, part }, units),
    ]),
    dimensionOf({ from: [left, hem], to: [left, topLine], offset: 7, running: id, part: "top-line" }, units),
    ...over.flatMap(({ role: kind, atMm, label, part }): Primitive[] => [
      line(
        kind,
        [
          [right - atMm, topLine - beyond],
          [right - atMm, hem],
        ],
        { part },
      ),
      note([right - atMm, topLine - beyond], label, {
        anchor: "start",
        baseline: "bottom",
        shiftPaperMm: [0, -1.5],
        angleDeg: -60,
        yields: true,
      }),
      dimensionOf(
        { from: [right, hem], to: [right - atMm, hem], offset: 7, running: `${id}-over`, part },
        units,
      ),
    ]),
    ...(over.length === 0
      ? []
      : [
          dimensionOf(
            { from: [right, hem], to: [left, hem], offset: 7, running: `${id}-over`, part: "edge" },
            units,
          ),
        ]),
    ...(alone
      ? []
      : [
          name([left + widthMm / 2, topLine - beyond], title, {
            shiftPaperMm: [0, over.length > 0 ? -21 : -3],
          }),
        ]),
    note([left, hem], "hem", { anchor: "end", shiftPaperMm: [-9, 0], yields: true }),
  ];
  return alone ? figure : movedOnPaper(figure, [0, BELOW_PAPER_MM + (over.length > 0 ? 18 : 0)]);
}
