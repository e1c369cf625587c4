import type { CornerLine, CornerPoint } from "../../shade-plan/index.ts";
import { lengthText } from "../../units/index.ts";
import type { Fact, Point, Primitive, Role } from "../model.ts";
import { line, name, note } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";

const ROLE: Record<CornerLine["kind"], Role> = {
  edge: "wrongSide",
  crease: "fold",
  mitre: "crease",
  trim: "markLine",
};
/** The corner takes this share of the shade's width, enlarged. */
const SHARE = 0.42;

/**
 * The bottom corner of the face before its hems are turned, wrong side up, enlarged: too small to be read at the scale
 * of the shade. Its measures are written, since they cannot be measured on the sheet.
 */
export function drawCorner(input: SheetInput, topYMm: number): Primitive[] {
  const { corner } = input.shade.cloth;
  if (corner.kind !== "mitred") return [];
  const { finishedWidthMm } = input.shade.size;
  const outs = corner.lines.flatMap(({ from, to }) => [from[0], to[0]]);
  const top = topOf(corner.lines);
  const least = Math.min(...outs);
  const spanMm = Math.max(...outs) - least;
  const k = (SHARE * finishedWidthMm) / spanMm;
  const left = finishedWidthMm * 0.12;
  const place = ([out, down]: CornerPoint): Point => [left + (out - least) * k, topYMm + (down - top) * k];
  const cloth: Point[] = [
    place([least, top]),
    place([corner.outMm, top]),
    place([corner.outMm, corner.downMm]),
    place([least, corner.downMm]),
  ];
  return [
    line("wrongSide", cloth, { closed: true, part: "corner" }),
    ...corner.lines.map(({ kind, from, to }) =>
      line(ROLE[kind], [place(from), place(to)], { part: "corner" }),
    ),
    name([left + (spanMm * k) / 2, topYMm], "Bottom corner, enlarged, hems not turned", {
      shiftPaperMm: [0, -9],
    }),
    ...labels(input, place),
  ];
}

/** A word at the end of each line, past the cloth. */
function labels({ shade, units }: SheetInput, place: (point: CornerPoint) => Point): Primitive[] {
  const { corner } = shade.cloth;
  const mitre = corner.lines.find(({ kind }) => kind === "mitre");
  const trim = corner.lines.find(({ kind }) => kind === "trim");
  const level = corner.lines.filter(({ kind, from, to }) => kind === "crease" && from[1] === to[1]);
  const right = (at: CornerPoint, text: string) =>
    note(place(at), text, { anchor: "start", shiftPaperMm: [2, 0], yields: true });
  const below = (at: CornerPoint, text: string) =>
    note(place(at), text, { shiftPaperMm: [0, 3.4], yields: true });
  return [
    ...level.map(({ to, label }) =>
      right(to, to[1] === 0 ? label : `${label}, ${lengthText(to[1], units)} lower`),
    ),
    ...(mitre === undefined
      ? []
      : [
          right(mitre.from, `fold of the corner, ${lengthText(-mitre.from[1], units)} above the hem line`),
          below(mitre.to, `${lengthText(-mitre.to[0], units)} from the side edge`),
        ]),
    ...(trim === undefined
      ? []
      : [right([corner.outMm, corner.downMm], "the tip is cut off along the chain line")]),
    note(place([0, topOf(corner.lines)]), "side edge", { shiftPaperMm: [0, -2.6] }),
  ];
}

function topOf(lines: readonly CornerLine[]): number {
  return Math.min(...lines.flatMap(({ from, to }) => [from[1], to[1]]));
}

/** The same in words. */
export function cornerFacts({ shade, units }: SheetInput): Fact[] {
  const { corner } = shade.cloth;
  const mitre = corner.lines.find(({ kind }) => kind === "mitre");
  if (corner.kind !== "mitred" || mitre === undefined) return [];
  return [
    lengthFact("Corner: fold meets the cut side edge, above the hem line", -mitre.from[1], units),
    lengthFact("Corner: fold meets the cut lower edge, in from the side edge", -mitre.to[0], units),
  ];
}
