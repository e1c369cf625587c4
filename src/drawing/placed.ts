import type { Fact, Point, Ref, Role } from "./model.ts";
import type { Paint } from "./paints.ts";

/**
 * A drawing laid out on paper: what `place()` makes and every renderer (SVG, PDF, screen) draws as it stands.
 *
 * All numbers are millimetres of paper, origin at the top left of the drawing's own box, x right, y down.
 * `items` are in painting order, first at the bottom. Every item carries its resolved look, so a renderer
 * needs nothing but this file and `PAINTS`: fill first, then stroke; round joins, round caps on solid lines and
 * butt caps on dashed ones (a round cap would close the gaps of a fine rhythm).
 */
export interface Placed {
  id: string;
  title: string;
  caption: string;
  /** Size of the box that holds everything, annotations included. */
  widthMm: number;
  heightMm: number;
  /** Millimetres of paper for one millimetre of the real thing. */
  scale: number;
  /** What the things themselves take of the paper, their words and measures apart, mm. */
  thingsMm: readonly [width: number, height: number];
  /** Where the model's origin lies: paper = model × scale + origin. */
  originMm: Point;
  items: PlacedItem[];
  facts: Fact[];
}

export interface Stroke {
  paint: Paint;
  widthMm: number;
  /** Dash and gap by turns, mm; absent for a solid line. */
  dashMm?: readonly number[];
}

/** Role, cord number and ref fields of the primitive that an item was made from. */
export interface PlacedCommon extends Ref {
  role: Role;
  cord?: number;
}

/** One or more polylines with one look. Hatching comes as a path of its own: already clipped, many short lines. */
export interface PlacedPath extends PlacedCommon {
  kind: "path";
  lines: readonly (readonly Point[])[];
  closed: boolean;
  /** Face cloth: how far it hung below here with the shade lowered, mm of the real thing. */
  clothShiftMm?: number;
  fill?: Paint;
  stroke?: Stroke;
}

/** Faces of a picture with their own colours as lit, one set of closed lines to each; each edge is drawn over in its colour. */
export interface PlacedFacets extends PlacedCommon {
  kind: "facets";
  faces: readonly { lines: readonly (readonly Point[])[]; hex: string }[];
  /** Width of that edge, mm: no paper shows between two faces. */
  edgeMm: number;
}

export interface PlacedCircle extends PlacedCommon {
  kind: "circle";
  centre: Point;
  radiusMm: number;
  fill?: Paint;
  stroke?: Stroke;
}

/**
 * One line of text. `at` lies on the alphabetic baseline, at the start, middle or end of the line as `anchor`
 * says; the text turns about `at` by `angleDeg`, clockwise on the page. Never upside down: −90 ≤ angle < 90,
 * and −90 reads upwards.
 */
export interface PlacedText extends PlacedCommon {
  kind: "text";
  at: Point;
  text: string;
  /** Height of the em, mm. */
  sizeMm: number;
  anchor: "start" | "middle" | "end";
  angleDeg: number;
  strong: boolean;
  paint: Paint;
  /** Estimated width of the line, mm (a little wide rather than narrow). */
  widthMm: number;
  /** A border round the letters, mm, where they may cross lines, and its colour (that of paper unless given). */
  haloMm?: number;
  haloPaint?: Paint;
}

export type PlacedItem = PlacedFacets | PlacedPath | PlacedCircle | PlacedText;

/** Drawn within these bounds, or at a fixed scale (1 is full size). */
export type Fit = { maxWidthMm: number; maxHeightMm: number } | { scale: number };

export interface PlaceOptions {
  /** Multiplies every size that is given on paper: letters, ticks, offsets. 1 unless given. */
  textScale?: number;
  /** Empty paper round everything, mm. 1 unless given. */
  marginMm?: number;
}
