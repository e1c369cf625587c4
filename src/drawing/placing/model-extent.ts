import type { Point, Primitive } from "../model.ts";
import type { PlacedItem } from "../placed.ts";
import type { Words } from "./annotate.ts";
import { type Box, emptyBox, include, includeBox } from "./box.ts";
import { SCISSORS_MM } from "./place-shape.ts";
import { type Scaling, toPaper } from "./scaling.ts";
import { textBox } from "./text-box.ts";

export const NO_SHIFT: Point = [0, 0];

/** Extents of the real thing, one box for each shift on paper; scissors stand out from the lines they cut. */
export interface ShiftedBox {
  box: Box;
  shift: Point;
  hasScissors: boolean;
}

export function modelBoxes(primitives: readonly Primitive[]): ShiftedBox[] {
  const boxes = new Map<string | boolean, ShiftedBox>();
  for (const primitive of primitives) {
    const isShape = !["marker", "text", "callout"].includes(primitive.kind);
    const shift = (isShape ? primitive.shiftPaperMm : undefined) ?? NO_SHIFT;
    const hasScissors = primitive.role === "cut";
    const key = shift === NO_SHIFT ? hasScissors : `${shift.join()} ${hasScissors}`;
    const entry = boxes.get(key) ?? { box: emptyBox(), shift, hasScissors };
    boxes.set(key, entry);
    includePrimitive(entry.box, primitive);
  }
  return [...boxes.values()];
}

function includePrimitive(box: Box, primitive: Primitive): void {
  switch (primitive.kind) {
    case "polyline":
      for (const point of primitive.points) include(box, point);
      break;
    case "facets":
      for (const { points } of primitive.faces) for (const point of points) include(box, point);
      break;
    case "circle":
      include(box, primitive.centre, primitive.radiusMm);
      break;
    case "dimension":
      include(box, primitive.from);
      include(box, primitive.to);
      break;
    default:
      include(box, primitive.at);
  }
}

export function extentOf(model: readonly ShiftedBox[], scaling: Scaling): Box {
  const extent = emptyBox();
  for (const { box, shift, hasScissors } of model) {
    const around = hasScissors ? SCISSORS_MM * 0.4 * scaling.textScale : 0;
    include(extent, toPaper([box.left, box.top], scaling, shift), around);
    include(extent, toPaper([box.right, box.bottom], scaling, shift), around);
  }
  if (extent.left > extent.right) include(extent, [0, 0]);
  return extent;
}

/** Half the widest pen, so that no edge is cut off. */
const PEN_MM = 0.5;

export function wholeBox(model: readonly ShiftedBox[], scaling: Scaling, { items, marks }: Words): Box {
  const extent = extentOf(model, scaling);
  const box = emptyBox();
  include(box, [extent.left, extent.top], PEN_MM);
  include(box, [extent.right, extent.bottom], PEN_MM);
  for (const item of items) includeItem(box, item);
  for (const mark of marks.values()) for (const item of mark) includeItem(box, item);
  return box;
}

function includeItem(box: Box, item: PlacedItem): void {
  switch (item.kind) {
    case "path":
      for (const line of item.lines) for (const point of line) include(box, point, 0.2);
      break;
    case "facets":
      for (const { lines } of item.faces)
        for (const line of lines) for (const point of line) include(box, point);
      break;
    case "circle":
      include(box, item.centre, item.radiusMm + 0.3);
      break;
    case "text":
      includeBox(box, textBox(item));
  }
}
