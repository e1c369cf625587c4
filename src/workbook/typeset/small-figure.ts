import { type Drawing, type Placed, type Primitive, place } from "../../drawing/index.ts";
import type { Book } from "./book.ts";
import { drawPlaced } from "./draw-placed.ts";
import { altText } from "./figure.ts";
import { mm, pt } from "./paper.ts";

/** A drawing laid out for a small place beside words that say what it shows: it has no caption of its own. */
export interface SmallFigure {
  placed: Placed;
  /** Less than 1 where its words alone are larger than its place. */
  zoom: number;
  widthPt: number;
  heightPt: number;
}

/** At arm’s length words of a small drawing cannot be read: the lines beside it say them in large letters. */
function isWordless(one: Primitive): boolean {
  if (one.kind === "marker") return one.shape !== "tag";
  return one.kind !== "text" && one.kind !== "callout" && one.role !== "dimension" && one.role !== "leader";
}

/** @param wordless leaves out all words and measures */
export function smallFigure(
  drawing: Drawing,
  maxWidthPt: number,
  maxHeightPt: number,
  { textScale, wordless = false }: { textScale: number; wordless?: boolean },
): SmallFigure {
  const primitives = wordless ? drawing.primitives.filter(isWordless) : drawing.primitives;
  const bounds = { maxWidthMm: mm(maxWidthPt), maxHeightMm: mm(maxHeightPt) };
  const placed = place({ ...drawing, primitives }, bounds, { textScale });
  const zoom = Math.min(1, maxWidthPt / pt(placed.widthMm), maxHeightPt / pt(placed.heightMm));
  return { placed, zoom, widthPt: pt(placed.widthMm) * zoom, heightPt: pt(placed.heightMm) * zoom };
}

/** With its top left corner at (x, y). */
export function setSmallFigure(
  book: Book,
  { placed, zoom, widthPt, heightPt }: SmallFigure,
  x: number,
  y: number,
): void {
  book.tags.mark("Figure", () => drawPlaced(book.pen, placed, x, y, zoom), {
    alt: altText(placed),
    bbox: [x, y, x + widthPt, y + heightPt],
  });
}
