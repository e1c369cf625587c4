import { lengthText, type UnitChoice } from "../../units/index.ts";
import type { Callout, Dimension, Marker, Point, Polyline, Primitive, Ref, Role, Text } from "../model.ts";
import { NAME_MM, NOTE_MM, TAG_MM } from "./sheet-input.ts";

/** Builders of primitives: the sheets say what, these fill in the rest. */

export interface DrawnRect {
  x: number;
  y: number;
  width: number;
  height: number;
}

export function rect(role: Role, { x, y, width, height }: DrawnRect, ref: Ref = {}): Polyline {
  return {
    kind: "polyline",
    role,
    closed: true,
    points: [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    ...ref,
  };
}

export function line(
  role: Role,
  points: readonly Point[],
  ref: Ref & { cord?: number; closed?: boolean } = {},
): Polyline {
  return { kind: "polyline", role, points, ...ref };
}

interface Measure extends Ref {
  from: Point;
  to: Point;
  /** On paper, mm; positive to the left of from→to. */
  offset: number;
  label?: string;
  running?: string;
  yields?: boolean;
  ground?: Role;
}

/** A dimension whose text is the distance that it spans. */
export function dimensionOf(
  { from, to, offset, label, running, ...ref }: Measure,
  units: UnitChoice,
): Dimension {
  return {
    kind: "dimension",
    role: "dimension",
    from,
    to,
    offsetPaperMm: offset,
    text: lengthText(Math.hypot(to[0] - from[0], to[1] - from[1]), units),
    ...(label === undefined ? {} : { label }),
    ...(running === undefined ? {} : { running }),
    ...ref,
  };
}

export function name(at: Point, text: string, rest: Partial<Text> = {}): Text {
  return { kind: "text", role: "label", at, text, paperMm: NAME_MM, anchor: "middle", strong: true, ...rest };
}

export function note(at: Point, text: string, rest: Partial<Text> = {}): Text {
  return { kind: "text", role: "note", at, text, paperMm: NOTE_MM, anchor: "middle", ...rest };
}

export function callout(
  at: Point,
  text: string,
  offset: Point,
  ref: Ref & { yields?: boolean } = {},
): Callout {
  return { kind: "callout", role: "label", at, text, paperMm: NOTE_MM, offsetPaperMm: offset, ...ref };
}

/** A number in a ring: of a cord where one is given. */
function tag(at: Point, text: string, rest: Partial<Marker> = {}): Marker {
  return { kind: "marker", role: "label", shape: "tag", at, text, paperMm: TAG_MM, ...rest };
}

export function cordTag(at: Point, number: number, shift: Point = [0, 0]): Marker {
  return tag(at, String(number), { role: "cord", cord: number, part: `cord-${number}`, shiftPaperMm: shift });
}

/** The same primitives moved on paper, by the same distance at any scale. */
export function movedOnPaper(primitives: readonly Primitive[], [dx, dy]: Point): Primitive[] {
  return primitives.map((primitive) => {
    const [x, y] = primitive.shiftPaperMm ?? [0, 0];
    return { ...primitive, shiftPaperMm: [x + dx, y + dy] };
  });
}

/** A screw seen end on. */
export function screwMark(at: Point, part: string, paperMm: number): Marker {
  return { kind: "marker", role: "screw", shape: "cross", at, paperMm, part };
}
