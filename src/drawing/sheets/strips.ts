import { lengthText } from "../../units/index.ts";
import type { Drawing, Point, Primitive } from "../model.ts";
import { line, name, note, rect } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";

/** Height of a strip, mm, and room between two. */
const STRIP_MM = 56;
const GAP_MM = 18;

interface Mark {
  label: string;
  atMm: number;
  part: string;
}

interface Strip {
  id: string;
  title: string;
  start: string;
  end: string;
  lengthMm: number;
  marks: Mark[];
}

function rowMarks({ shade }: SheetInput): Strip {
  return {
    id: "strip-rows",
    title: "Strip for the rows",
    start: "hem",
    end: "top line",
    lengthMm: shade.size.finishedLengthMm,
    marks: shade.grid.rows.map((row) => ({
      label: `row ${row.number}`,
      atMm: row.fromHemMm,
      part: `row-${row.number}`,
    })),
  };
}

function columnMarks({ shade }: SheetInput): Strip {
  return {
    id: "strip-columns",
    title: "Strip for the columns",
    start: "left edge, seen from the room",
    end: "right edge",
    lengthMm: shade.size.finishedWidthMm,
    marks: shade.grid.columns.map((column) => ({
      label: `column ${column.number}`,
      atMm: column.xMm,
      part: `column-${column.number}`,
    })),
  };
}

/** Both marking strips, one under the other. To be printed at full size. */
export function drawStrips(input: SheetInput): Drawing {
  const strips = [rowMarks(input), columnMarks(input)];
  return drawing(input, "strips", "Marking strips", strips);
}

/** One strip alone, for tiling: row marks from the hem up. */
export function drawRowStrip(input: SheetInput): Drawing {
  const strip = rowMarks(input);
  return drawing(input, strip.id, strip.title, [strip]);
}

/** One strip alone, for tiling: column marks from the left edge seen from the room. */
export function drawColumnStrip(input: SheetInput): Drawing {
  const strip = columnMarks(input);
  return drawing(input, strip.id, strip.title, [strip]);
}

function drawing({ units }: SheetInput, id: string, title: string, strips: Strip[]): Drawing {
  return {
    id,
    title,
    caption: "Print at full size and measure the test square before you trust them.",
    primitives: strips.flatMap((strip, i) => drawStrip(strip, i * (STRIP_MM + GAP_MM), units)),
    facts: strips.flatMap((strip) =>
      strip.marks.map((mark) => lengthFact(`${mark.label} from the ${strip.start}`, mark.atMm, units)),
    ),
  };
}

function drawStrip(strip: Strip, top: number, units: SheetInput["units"]): Primitive[] {
  const upright = (x: number): Point[] => [
    [x, top],
    [x, top + STRIP_MM],
  ];
  const middle = top + STRIP_MM / 2;
  const marks = strip.marks.flatMap((mark): Primitive[] => [
    line("markLine", upright(mark.atMm), { part: mark.part }),
    {
      kind: "marker",
      role: "markLine",
      shape: "cross",
      at: [mark.atMm, middle],
      paperMm: 5,
      part: mark.part,
    },
    name([mark.atMm, top + STRIP_MM * 0.25], mark.label, {
      anchor: "start",
      shiftPaperMm: [2, 0],
      part: mark.part,
      yields: true,
    }),
    note([mark.atMm, top + STRIP_MM * 0.75], lengthText(mark.atMm, units), {
      anchor: "start",
      shiftPaperMm: [2, 0],
      part: mark.part,
      yields: true,
    }),
  ]);
  return [
    rect("overlapMark", { x: 0, y: top, width: strip.lengthMm, height: STRIP_MM }),
    line("cut", upright(0)),
    line("cut", upright(strip.lengthMm)),
    ...marks,
    name([0, middle], strip.start, { anchor: "start", shiftPaperMm: [2, 0], strong: false, yields: true }),
    name([strip.lengthMm, middle], strip.end, {
      anchor: "end",
      shiftPaperMm: [-2, 0],
      strong: false,
      yields: true,
    }),
    note([strip.lengthMm, top + STRIP_MM * 0.75], lengthText(strip.lengthMm, units), {
      anchor: "end",
      shiftPaperMm: [-2, 0],
      yields: true,
    }),
  ];
}
