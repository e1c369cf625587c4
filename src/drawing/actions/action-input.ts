import type { ActionKind, StepAction } from "../../shade-plan/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import type { Fact, Point, Primitive } from "../model.ts";
import { name, note } from "../sheets/shapes.ts";
import { stroke } from "./kit.ts";

/** One action of one kind, with lengths in the maker's units. */
export type ActionOf<Kind extends ActionKind> = Extract<StepAction, { kind: Kind }>;
export interface ActionInput<Kind extends ActionKind> {
  action: ActionOf<Kind>;
  units: UnitChoice;
}

/** What an action drawing has to say for itself. */
export interface ActionDrawing {
  title: string;
  primitives: Primitive[];
  facts: Fact[];
}

const LINE_PAPER_MM = 4.1;

/** A strong figure; words beside a drawing are few. */
export function figureName(
  at: Point,
  text: string,
  anchor: "start" | "middle" | "end" = "middle",
): Primitive {
  return name(at, text, { anchor });
}

/** A few quiet words: left out where the drawing would have too little of a small place. */
export function word(at: Point, text: string, anchor: "start" | "middle" | "end" = "middle"): Primitive {
  return note(at, text, { anchor, yields: true });
}

/** Lines under one another, as far apart on paper as their letters ask for whatever the scale; the first may be a figure. */
export function stacked(
  at: Point,
  lines: readonly string[],
  { anchor = "start", figure = true }: { anchor?: "start" | "middle" | "end"; figure?: boolean } = {},
): Primitive[] {
  return lines.map((text, i) => {
    const one = i === 0 && figure ? figureName(at, text, anchor) : word(at, text, anchor);
    return { ...one, shiftPaperMm: [0, i * LINE_PAPER_MM] as const };
  });
}

/** A distance told by its figure alone: nothing here is drawn to a scale. */
export function measured(from: Point, to: Point, text: string, textAt: Point): Primitive[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [nx, ny] = [(-(to[1] - from[1]) / length) * 1.6, ((to[0] - from[0]) / length) * 1.6];
  const tick = ([x, y]: Point) =>
    stroke("dimension", [
      [x - nx, y - ny],
      [x + nx, y + ny],
    ]);
  return [stroke("dimension", [from, to]), tick(from), tick(to), figureName(textAt, text)];
}

export function lengthsIn(units: UnitChoice): (lengthMm: number) => string {
  return (lengthMm) => lengthText(lengthMm, units);
}
