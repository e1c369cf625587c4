import { type Box, emptyBox, include, includeBox } from "./box.ts";
import type { Dimension, Drawing, Marker, Point, Primitive } from "./model.ts";
import { placeDimension } from "./place-dimension.ts";
import { placeRunning } from "./place-running.ts";
import { placeCircle, placePolyline, SCISSORS_MM } from "./place-shape.ts";
import { placeCallout, placeMarker, placeStack, placeText, type Scaling, toPaper } from "./place-text.ts";
import type { Fit, Placed, PlacedItem, PlaceOptions } from "./placed.ts";
import { TakenPlaces, textBox } from "./text-box.ts";

const MARGIN_MM = 1;
/** Words stand at least this far apart, mm. */
const APART_MM = 0.5;
/** A drawing is never shrunk to less than this share of its bounds by its own words. */
const LEAST_SHARE = 0.08;
const MOST_TRIES = 9;
/** A drawing that leaves less than this share of the room free is large enough. */
const NEAR_SHARE = 0.01;
/** Share of the room that the bare drawing gets at the first try. */
const FIRST_SHARE = 0.75;
const NO_SHIFT: Point = [0, 0];

/**
 * Lays a drawing out on paper: model millimetres times the scale, and everything that is sized on paper
 * (letters, ticks, offsets) on top. With bounds given, the largest scale at which all of it still fits.
 */
export function place(drawing: Drawing, fit: Fit, options: PlaceOptions = {}): Placed {
  const { textScale = 1, marginMm = MARGIN_MM } = options;
  const model = modelBoxes(drawing.primitives);
  const { scale, words, box } =
    "scale" in fit
      ? layOut(drawing.primitives, model, { scale: fit.scale, textScale })
      : roomiest(drawing, model, fit, textScale, marginMm);
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

/** Extents of the real thing, one box for each shift on paper; scissors stand out from the lines they cut. */
interface ShiftedBox {
  box: Box;
  shift: Point;
  hasScissors: boolean;
}

function modelBoxes(primitives: readonly Primitive[]): ShiftedBox[] {
  const boxes = new Map<string | boolean, ShiftedBox>();
  for (const primitive of primitives) {
    const isShape =
      primitive.kind === "polyline" || primitive.kind === "circle" || primitive.kind === "dimension";
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

function extentOf(model: readonly ShiftedBox[], scaling: Scaling): Box {
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

function wholeBox(model: readonly ShiftedBox[], scaling: Scaling, { items, marks }: Words): Box {
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
    case "circle":
      include(box, item.centre, item.radiusMm + 0.3);
      break;
    case "text":
      includeBox(box, textBox(item));
  }
}

/** With less than this share of the paper in both directions the drawing has too little of it. */
const TIGHT_SHARE = 0.6;
/** Words that yield are given up for a drawing that grows by at least this factor. */
const WORTH_IT = 1.15;

/** All words, or on a small paper only those that do not yield, where the drawing gains much by it. */
function roomiest(
  drawing: Drawing,
  model: readonly ShiftedBox[],
  fit: { maxWidthMm: number; maxHeightMm: number },
  textScale: number,
  marginMm: number,
): Layout {
  const full = fitted(drawing.primitives, model, fit, textScale, marginMm);
  const real = extentOf(model, { scale: full.scale, textScale: 0 });
  const isTight =
    real.right - real.left < TIGHT_SHARE * fit.maxWidthMm &&
    real.bottom - real.top < TIGHT_SHARE * fit.maxHeightMm;
  if (!isTight) return full;
  const firm = drawing.primitives.filter((primitive) => primitive.yields !== true);
  if (firm.length === drawing.primitives.length) return full;
  const sparse = fitted(firm, model, fit, textScale, marginMm);
  return sparse.scale > WORTH_IT * full.scale ? sparse : full;
}

interface Layout {
  scale: number;
  words: Words;
  box: Box;
}

function layOut(primitives: readonly Primitive[], model: readonly ShiftedBox[], scaling: Scaling): Layout {
  const words = annotate(primitives, scaling);
  return { scale: scaling.scale, words, box: wholeBox(model, scaling, words) };
}

/**
 * The largest scale at which drawing and words fit, to within a hundredth of the room. How far a drawing overshoots
 * grows almost in proportion to its scale (words hardly change), so a few steps are enough; each narrows
 * the stretch between a scale that fits and one that does not.
 */
function fitted(
  primitives: readonly Primitive[],
  model: readonly ShiftedBox[],
  fit: { maxWidthMm: number; maxHeightMm: number },
  textScale: number,
  marginMm: number,
): Layout {
  const real = extentOf(model, { scale: 1, textScale: 0 });
  const width = {
    real: Math.max(real.right - real.left, 1e-6),
    most: Math.max(1, fit.maxWidthMm - 2 * marginMm),
  };
  const height = {
    real: Math.max(real.bottom - real.top, 1e-6),
    most: Math.max(1, fit.maxHeightMm - 2 * marginMm),
  };
  const nearMm = NEAR_SHARE * Math.min(width.most, height.most);
  const bare = Math.min(width.most / width.real, height.most / height.real);
  let fits = bare * LEAST_SHARE;
  let tooLarge = bare;
  let best: Layout | undefined;
  let scale = bare * FIRST_SHARE;
  for (let attempt = 0; attempt < MOST_TRIES; attempt += 1) {
    const layout = layOut(primitives, model, { scale, textScale });
    const { box } = layout;
    const overs = [box.right - box.left - width.most, box.bottom - box.top - height.most] as const;
    const over = Math.max(...overs);
    if (over <= 0) {
      best = layout;
      fits = scale;
      if (over > -nearMm) break;
    } else tooLarge = scale;
    // Both sides grow by their real size for each unit of scale; the tighter one decides.
    const wished = Math.min(
      scale - (overs[0] + nearMm / 2) / width.real,
      scale - (overs[1] + nearMm / 2) / height.real,
    );
    scale = Math.min(fits + 0.97 * (tooLarge - fits), Math.max(fits + 0.03 * (tooLarge - fits), wished));
  }
  return best ?? layOut(primitives, model, { scale: fits, textScale });
}

interface Words {
  items: PlacedItem[];
  /** What markers became: they are painted in order with the shapes. */
  marks: Map<Primitive, PlacedItem[]>;
}

/** Everything that is sized on paper, about the model's own origin. Fixed words first, yielding ones last. */
function annotate(primitives: readonly Primitive[], scaling: Scaling): Words {
  const taken = new TakenPlaces(APART_MM * scaling.textScale);
  const fixed: PlacedItem[] = [];
  const marks: Words["marks"] = new Map();
  const dimensions: Dimension[] = [];
  const running = new Map<string, Dimension[]>();
  const stacks = new Map<string, Marker[]>();
  const yielding: Primitive[] = [];
  for (const primitive of primitives) {
    switch (primitive.kind) {
      case "text":
        if (primitive.yields === true) yielding.push(primitive);
        else fixed.push(...placeText(primitive, scaling, taken));
        break;
      case "callout":
        yielding.push(primitive);
        break;
      case "marker":
        if (primitive.stack === undefined) marks.set(primitive, placeMarker(primitive, scaling, taken));
        else stacks.set(primitive.stack, [...(stacks.get(primitive.stack) ?? []), primitive]);
        break;
      case "dimension":
        if (primitive.running === undefined) dimensions.push(primitive);
        else running.set(primitive.running, [...(running.get(primitive.running) ?? []), primitive]);
        break;
      default:
    }
  }
  const tags = [...stacks.values()].flatMap((stack) => placeStack(stack, scaling, taken));
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
  // Lines first: then the border of every word covers what runs under it.
  const items = [...measures, ...late, ...fixed];
  const isText = (item: PlacedItem) => item.kind === "text";
  return { items: [...items.filter((item) => !isText(item)), ...items.filter(isText), ...tags], marks };
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
      case "circle":
        return placeCircle(primitive, pageOf(primitive.shiftPaperMm), scale);
      case "marker":
        return (marks.get(primitive) ?? []).map((item) => moved(item, [x0, y0]));
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
