import { hemYMm, ringFromHemMm } from "../../shade-plan/index.ts";
import { lengthText, toMark } from "../../units/index.ts";
import type { Drawing, Point, Primitive } from "../model.ts";
import { flatFace, marksAlong } from "./cloth-marks.ts";
import { dimensionOf, line, movedOnPaper, name, note, rect } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";

/** Height of a strip, mm, and room between two on paper. */
const STRIP_MM = 56;
const GAP_PAPER_MM = 24;

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

/** Of rows that slant one strip for either edge. */
function rowStrips({ shade }: SheetInput): Strip[] {
  const { grid, size } = shade;
  const strip = (id: string, title: string, acrossMm: number): Strip => ({
    id,
    title,
    start: "hem",
    end: "top line",
    lengthMm: hemYMm(grid, size, acrossMm),
    marks: grid.rows.map((row) => ({
      label: `row ${row.number}`,
      atMm: ringFromHemMm(row, acrossMm, size.finishedWidthMm),
      part: `row-${row.number}`,
    })),
  });
  if (grid.rows.every(({ ends }) => ends === undefined))
    return [strip("strip-rows", "Strip for the rows", 0)];
  return [
    strip("strip-rows-left", "Strip for the rows at the left edge, seen from the room", 0),
    strip("strip-rows-right", "Strip for the rows at the right edge", size.finishedWidthMm),
  ];
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

/** Lines of the style on the flat face, up from the hem and over from the left edge, where there are any. */
function clothStrips({ shade }: SheetInput): Strip[] {
  const flat = flatFace(shade);
  const strips: Strip[] = [
    {
      id: "strip-cloth-up",
      title: "Strip for the flat cloth, from the hem up",
      start: "hem",
      end: "top line",
      lengthMm: flat.lengthMm,
      marks: markedAlong(shade, "y"),
    },
    {
      id: "strip-cloth-over",
      title: "Strip for the flat cloth, from the left edge",
      start: "left edge of the flat face, seen from the room",
      end: "right edge",
      lengthMm: flat.widthMm,
      marks: markedAlong(shade, "x"),
    },
  ];
  return strips.filter(({ marks }) => marks.length > 0);
}

function markedAlong(shade: SheetInput["shade"], along: "x" | "y"): Mark[] {
  return marksAlong(shade, along).map(({ kind, label, atMm }, i) => ({
    label,
    atMm,
    part: `${kind}-${along}-${i + 1}`,
  }));
}

/** All strips, each mark where its figure says on the ruler at hand: strip, list and tape agree. */
function allStrips(input: SheetInput): Strip[] {
  const { ruler } = input.units;
  return [...rowStrips(input), columnMarks(input), ...clothStrips(input)].map((strip) => ({
    ...strip,
    lengthMm: toMark(strip.lengthMm, ruler),
    marks: strip.marks.map((mark) => ({ ...mark, atMm: toMark(mark.atMm, ruler) })),
  }));
}

/** Every strip alone, for tiling. */
export function drawEachStrip(input: SheetInput): Drawing[] {
  return allStrips(input).map((strip) => drawing(input, strip.id, strip.title, [strip]));
}

/** The marking strips, one under the other. To be printed at full size. */
export function drawStrips(input: SheetInput): Drawing {
  return drawing(input, "strips", "Marking strips", allStrips(input));
}

function drawing({ units }: SheetInput, id: string, title: string, strips: Strip[]): Drawing {
  return {
    id,
    title,
    caption: "Print at full size and measure the test square before you trust them.",
    primitives: strips.flatMap((strip, i) =>
      movedOnPaper(drawStrip(strip, i * STRIP_MM, units), [0, i * GAP_PAPER_MM]),
    ),
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
  const upper = top + STRIP_MM * 0.3;
  const lower = top + STRIP_MM * 0.7;
  const bottom = top + STRIP_MM;
  const onStrip = { anchor: "start", shiftPaperMm: [2, 0], yields: true } as const;
  return [
    rect("cut", { x: 0, y: top, width: strip.lengthMm, height: STRIP_MM }),
    ...strip.marks.flatMap((mark, i): Primitive[] => {
      const next = strip.marks[i + 1]?.atMm ?? strip.lengthMm;
      const words = {
        ...onStrip,
        roomMm: [(next - mark.atMm) * 0.7, STRIP_MM * 0.45],
        part: mark.part,
      } as const;
      return [
        line("markLine", upright(mark.atMm), { part: mark.part }),
        name([mark.atMm, upper], mark.label, words),
        note([mark.atMm, lower], lengthText(mark.atMm, units), words),
      ];
    }),
    name([0, lower], strip.start, { ...onStrip, strong: false }),
    name([strip.lengthMm, lower], strip.end, {
      ...onStrip,
      anchor: "end",
      shiftPaperMm: [-2, 0],
      strong: false,
    }),
    ...[...strip.marks, { atMm: strip.lengthMm, part: strip.id }].map(({ atMm, part }) =>
      dimensionOf({ from: [0, bottom], to: [atMm, bottom], offset: -5, running: strip.id, part }, units),
    ),
  ];
}
