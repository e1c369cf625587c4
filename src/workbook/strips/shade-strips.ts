import { marksAlong } from "../../drawing/index.ts";
import {
  boardMarks,
  flatSize,
  fromBoardEndMm,
  hemInWords,
  hemIsCurved,
  rowsAreDrawnUp,
} from "../../shade-plan/index.ts";
import { toMark } from "../../units/index.ts";
import { capital } from "../pages/sentence.ts";
import type { ShadeContext } from "../shade-context.ts";
import type { Strip, StripMark } from "./tile-strip.ts";

/** The strips that a shade is marked from: rows, columns, the board, and the flat cloth where the style marks it. */
export function shadeStrips(context: ShadeContext): Strip[] {
  const cloth = [clothUp(context), clothOver(context)].filter(({ marks }) => marks.length > 2);
  // Across a panel that widens no one strip fits: its columns lie by the edge beside them.
  const across = context.shade.form.panel === undefined ? [columns(context)] : [];
  return [rows(context), ...across, boardStrip(context), ...cloth].map((strip, i) => ({
    ...strip,
    key: String.fromCharCode("A".charCodeAt(0) + i),
  }));
}

/** Its key is its place among the strips of its shade. */
type BareStrip = Omit<Strip, "key">;

type Marker = (name: string, atMm: number, end?: boolean) => StripMark;

/** A mark lies where its figure says, on the ruler that the maker works with: strip, list and tape agree. */
function marker({ length, plan }: ShadeContext): Marker {
  return (name, atMm, end = false) => ({ name, atMm: onRuler(plan, atMm), text: length(atMm), end });
}

function onRuler({ units }: ShadeContext["plan"], lengthMm: number): number {
  return toMark(lengthMm, units.ruler);
}

function rows(context: ShadeContext): BareStrip {
  const { shade, plan } = context;
  const { grid, size } = shade;
  const mark = marker(context);
  return {
    name: "Rows",
    title: `Rows, from ${hemInWords(shade.form)} up`,
    use: rowsUse(shade),
    lengthMm: onRuler(plan, size.finishedLengthMm),
    marks: [
      mark("Hem", 0, true),
      ...grid.rows.map((row) => mark(`Row ${row.number}`, row.fromHemMm)),
      mark("Top line", size.finishedLengthMm, true),
    ],
  };
}

function rowsUse(shade: ShadeContext["shade"]): string {
  if (rowsAreDrawnUp(shade))
    return "Hold it along a column of the shade drawn up, its end on the top line: there the rings come.";
  return hemIsCurved(shade.form)
    ? `Lay it along the side of the shade, its start level with ${hemInWords(shade.form)}: on a tape across the table.`
    : "Lay it along the side of the shade, its start on the finished hem.";
}

/** Where the finished width is that the columns are measured on. */
const TAKEN_IN = { flat: "", pleated: ", its pleats closed", gathered: ", gathered" } as const;

function columns(context: ShadeContext): BareStrip {
  const { shade, plan } = context;
  const { grid, size } = shade;
  const mark = marker(context);
  return {
    name: "Columns",
    title: "Columns, from the left edge",
    use: `Lay it across the shade${TAKEN_IN[shade.form.across]}, face up, its start on the left finished edge. Face down, start at the right.`,
    lengthMm: onRuler(plan, size.finishedWidthMm),
    marks: [
      mark("Left edge", 0, true),
      ...grid.columns.map((column) => mark(`Column ${column.number}`, column.xMm)),
      mark("Right edge", size.finishedWidthMm, true),
    ],
  };
}

function clothUp(context: ShadeContext): BareStrip {
  const { shade, plan } = context;
  const { lengthMm } = flatSize(shade.size, shade.form, "face");
  const mark = marker(context);
  return {
    name: "Cloth, up",
    title: "The flat cloth, from the hem up",
    use: "Lay it along the side of the flat, hemmed face, its start on the hem, before anything is sewn up or gathered.",
    lengthMm: onRuler(plan, lengthMm),
    marks: [
      mark("Hem", 0, true),
      ...marksAlong(shade, "y").map(({ label, atMm }) => mark(capital(label), atMm)),
      mark("Top line", lengthMm, true),
    ],
  };
}

function clothOver(context: ShadeContext): BareStrip {
  const { shade, plan } = context;
  const { widthMm } = flatSize(shade.size, shade.form, "face");
  const mark = marker(context);
  return {
    name: "Cloth, over",
    title: "The flat cloth, from the left edge",
    use: "Lay it across the flat, hemmed face, right side up, its start on the left edge. Face down, start at the right.",
    lengthMm: onRuler(plan, widthMm),
    marks: [
      mark("Left edge", 0, true),
      ...marksAlong(shade, "x").map(({ label, atMm }) => mark(capital(label), atMm)),
      mark("Right edge", widthMm, true),
    ],
  };
}

function boardStrip(context: ShadeContext): BareStrip {
  const { shade, plan } = context;
  const ends = marker(context);
  const along = (xMm: number) => fromBoardEndMm(shade, xMm);
  const endMm = along(shade.board.leftMm + shade.board.lengthMm);
  const inner = boardMarks(shade)
    .map(({ name, xMm }) => ends(name, along(xMm)))
    .sort((a, b) => a.atMm - b.atMm);
  return {
    name: "Board",
    title: "Board, from its left end",
    use: "Lay it along the underside of the board, its start on the left end as seen from the room.",
    lengthMm: onRuler(plan, endMm),
    marks: [ends("Left end", 0, true), ...inner, ends("Right end", endMm, true)],
  };
}
