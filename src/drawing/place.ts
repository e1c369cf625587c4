import { type Box, emptyBox, include, includeBox } from "./box.ts";
import type { Dimension, Drawing, Point, Primitive } from "./model.ts";
import { placeDimension } from "./place-dimension.ts";
import { placeRunning } from "./place-running.ts";
import { placeCircle, placePolyline } from "./place-shape.ts";
import { placeCallout, placeMarker, placeText, type Scaling } from "./place-text.ts";
import type { Fit, Placed, PlacedItem, PlaceOptions } from "./placed.ts";
import { TakenPlaces, textBox } from "./text-box.ts";

const MARGIN_MM = 1;
/** Words stand at least this far apart, mm. */
const APART_MM = 0.5;
/** A drawing is never shrunk to less than this share of its bounds by its own words. */
const LEAST_SHARE = 0.2;
const MOST_TRIES = 6;

/**
 * Lays a drawing out on paper: model millimetres times the scale, and everything that is sized on paper
 * (letters, ticks, offsets) on top. With bounds given, the largest scale at which all of it still fits.
 */
export function place(drawing: Drawing, fit: Fit, options: PlaceOptions = {}): Placed {
  const { textScale = 1, marginMm = MARGIN_MM } = options;
  const model = modelBox(drawing.primitives);
  const scale = "scale" in fit ? fit.scale : fittingScale(drawing, model, fit, textScale, marginMm);
  const words = annotate(drawing.primitives, { scale, textScale });
  const box = wholeBox(model, scale, words);
  const originMm: Point = [marginMm - box.left, marginMm - box.top];
  return {
    id: drawing.id,
    title: drawing.title,
    caption: drawing.caption,
    widthMm: box.right - box.left + 2 * marginMm,
    heightMm: box.bottom - box.top + 2 * marginMm,
    scale,
    originMm,
    items: [
      ...shapes(drawing.primitives, scale, originMm, textScale, words.marks),
      ...words.items.map((item) => moved(item, originMm)),
    ],
    facts: drawing.facts,
  };
}

function modelBox(primitives: readonly Primitive[]): Box {
  const box = emptyBox();
  for (const primitive of primitives) {
    switch (primitive.kind) {
      case "polyline":
        for (const point of primitive.points) include(box, point);
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
  if (box.left > box.right) include(box, [0, 0]);
  return box;
}

function wholeBox(model: Box, scale: number, { items, marks }: Words): Box {
  const box = emptyBox();
  // Half the widest pen, so that no edge is cut off.
  const pen = 0.5;
  include(box, [model.left * scale, model.top * scale], pen);
  include(box, [model.right * scale, model.bottom * scale], pen);
  for (const item of items) includeItem(box, item);
  for (const mark of marks.values()) for (const item of mark) includeItem(box, item);
  return box;
}

function includeItem(box: Box, item: PlacedItem): void {
  switch (item.kind) {
    case "path":
      for (const line of item.lines) for (const point of line) include(box, point, 0.2);
      break;
    case "circle":
      include(box, item.centre, item.radiusMm + 0.3);
      break;
    case "text":
      includeBox(box, textBox(item));
  }
}

/** The largest scale at which drawing and words fit: words hardly change with it, so a few tries are enough. */
function fittingScale(
  drawing: Drawing,
  model: Box,
  fit: { maxWidthMm: number; maxHeightMm: number },
  textScale: number,
  marginMm: number,
): number {
  const modelWidth = Math.max(model.right - model.left, 1e-6);
  const modelHeight = Math.max(model.bottom - model.top, 1e-6);
  const maxWidth = fit.maxWidthMm - 2 * marginMm;
  const maxHeight = fit.maxHeightMm - 2 * marginMm;
  const bare = Math.min(maxWidth / modelWidth, maxHeight / modelHeight);
  let fits = 0;
  let tooLarge = bare;
  let scale = bare * 0.85;
  for (let attempt = 0; attempt < MOST_TRIES; attempt += 1) {
    const box = wholeBox(model, scale, annotate(drawing.primitives, { scale, textScale }));
    const width = box.right - box.left;
    const height = box.bottom - box.top;
    const isFitting = width <= maxWidth && height <= maxHeight;
    if (isFitting) fits = Math.max(fits, scale);
    else tooLarge = Math.min(tooLarge, scale);
    const wish = Math.min(
      (maxWidth - (width - modelWidth * scale)) / modelWidth,
      (maxHeight - (height - modelHeight * scale)) / modelHeight,
    );
    const next = Math.max(bare * LEAST_SHARE, Math.min(wish, bare));
    if (isFitting && next <= scale * 1.004) break;
    scale = next >= tooLarge || next <= fits ? (fits + tooLarge) / 2 : next;
  }
  return fits > 0 ? fits : bare * LEAST_SHARE;
}

interface Words {
  items: PlacedItem[];
  /** Markers by their place in the drawing: they are painted in order with the shapes. */
  marks: Map<number, PlacedItem[]>;
}

/** Everything that is sized on paper, about the model's own origin. Fixed words first, yielding ones last. */
function annotate(primitives: readonly Primitive[], scaling: Scaling): Words {
  const taken = new TakenPlaces(APART_MM * scaling.textScale);
  const fixed: PlacedItem[] = [];
  const marks: Words["marks"] = new Map();
  const dimensions: Dimension[] = [];
  const running = new Map<string, Dimension[]>();
  const yielding: Primitive[] = [];
  primitives.forEach((primitive, index) => {
    switch (primitive.kind) {
      case "text":
        if (primitive.yields === true) yielding.push(primitive);
        else fixed.push(...placeText(primitive, scaling, taken));
        break;
      case "callout":
        yielding.push(primitive);
        break;
      case "marker":
        marks.set(index, placeMarker(primitive, scaling, taken));
        break;
      case "dimension":
        if (primitive.running === undefined) dimensions.push(primitive);
        else running.set(primitive.running, [...(running.get(primitive.running) ?? []), primitive]);
        break;
      default:
    }
  });
  const measures = [
    ...dimensions.flatMap((dimension) => placeDimension(dimension, scaling, taken)),
    ...[...running.values()].flatMap((group) => placeRunning(group, scaling, taken)),
  ];
  const late = yielding.flatMap((primitive) =>
    primitive.kind === "callout"
      ? placeCallout(primitive, scaling, taken)
      : primitive.kind === "text"
        ? placeText(primitive, scaling, taken)
        : [],
  );
  return { items: [...measures, ...late, ...fixed], marks };
}

function shapes(
  primitives: readonly Primitive[],
  scale: number,
  [x0, y0]: Point,
  textScale: number,
  marks: Words["marks"],
): PlacedItem[] {
  const toPage = ([x, y]: Point): Point => [x * scale + x0, y * scale + y0];
  return primitives.flatMap((primitive, index) => {
    switch (primitive.kind) {
      case "polyline":
        return placePolyline(primitive, toPage, textScale);
      case "circle":
        return placeCircle(primitive, toPage, scale);
      case "marker":
        return (marks.get(index) ?? []).map((item) => moved(item, [x0, y0]));
      default:
        return [];
    }
  });
}

function moved(item: PlacedItem, [dx, dy]: Point): PlacedItem {
  const move = ([x, y]: Point): Point => [x + dx, y + dy];
  switch (item.kind) {
    case "path":
      return { ...item, lines: item.lines.map((line) => line.map(move)) };
    case "circle":
      return { ...item, centre: move(item.centre) };
    case "text":
      return { ...item, at: move(item.at) };
  }
}
