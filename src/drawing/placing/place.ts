import type { Drawing, Point, Primitive } from "../model.ts";
import type { Fit, Placed, PlacedItem, PlaceOptions } from "../placed.ts";
import type { Words } from "./annotate.ts";
import { layOutDrawing, roomiest } from "./fit-scale.ts";
import { extentOf, modelBoxes, NO_SHIFT } from "./model-extent.ts";
import { moved } from "./moved.ts";
import { placeFacets } from "./place-facets.ts";
import { placeCircle, placePolyline } from "./place-shape.ts";

const MARGIN_MM = 1;

/**
 * Lays a drawing out on paper: model millimetres times the scale, and everything that is sized on paper
 * (letters, ticks, offsets) on top. With bounds given, the largest scale at which all of it still fits.
 */
export function place(drawing: Drawing, fit: Fit, options: PlaceOptions = {}): Placed {
  const { textScale = 1, marginMm = MARGIN_MM } = options;
  const model = modelBoxes(drawing.primitives);
  const { scale, words, box } =
    "scale" in fit
      ? layOutDrawing(drawing.primitives, model, { scale: fit.scale, textScale })
      : roomiest(drawing, model, fit, textScale, marginMm);
  const things = extentOf(model, { scale, textScale: 0 });
  const originMm: Point = [marginMm - box.left, marginMm - box.top];
  return {
    id: drawing.id,
    title: drawing.title,
    caption: drawing.caption,
    widthMm: box.right - box.left + 2 * marginMm,
    heightMm: box.bottom - box.top + 2 * marginMm,
    scale,
    thingsMm: [things.right - things.left, things.bottom - things.top],
    originMm,
    items: [
      ...shapes(drawing.primitives, scale, originMm, textScale, words.marks),
      ...words.items.map((item) => moved(item, originMm)),
    ],
    facts: drawing.facts,
  };
}

function shapes(
  primitives: readonly Primitive[],
  scale: number,
  [x0, y0]: Point,
  textScale: number,
  marks: Words["marks"],
): PlacedItem[] {
  const pageOf = (shift: Point = NO_SHIFT) => {
    const dx = x0 + shift[0] * textScale;
    const dy = y0 + shift[1] * textScale;
    return ([x, y]: Point): Point => [x * scale + dx, y * scale + dy];
  };
  return primitives.flatMap((primitive) => {
    switch (primitive.kind) {
      case "polyline":
        return placePolyline(primitive, pageOf(primitive.shiftPaperMm), textScale);
      case "facets":
        return [placeFacets(primitive, pageOf(primitive.shiftPaperMm))];
      case "circle":
        return placeCircle(primitive, pageOf(primitive.shiftPaperMm), scale);
      case "marker":
        return (marks.get(primitive) ?? []).map((item) => moved(item, [x0, y0]));
      default:
        return [];
    }
  });
}
