import {
  type Drawing,
  moved,
  type Placed,
  type PlacedItem,
  type Role,
  shapesBox,
} from "../../drawing/index.ts";
import { placedOnce } from "./figure.ts";
import { mm, pt } from "./paper.ts";

/** Roles that only carry words: at the size of a thumbnail they would be a blur. */
const WORDS: ReadonlySet<Role> = new Set(["dimension", "leader", "note", "label"]);

/** Size at which a drawing is laid out before it is made small. */
const FULL_PT = { width: 340, height: 340 };

/** A drawing made small: shapes and the tags of cords, no other words. */
export interface Thumbnail {
  /** Of the shapes alone, shifted to the top left corner. */
  placed: Placed;
  zoom: number;
  widthPt: number;
  heightPt: number;
}

function isShown(item: PlacedItem): boolean {
  if (item.cord !== undefined) return item.kind !== "text" || item.role === "cord";
  return item.kind !== "text" && !WORDS.has(item.role);
}

/** Room for the pens at the edges, mm. */
const PEN_MM = 0.4;

export function thumbnail(drawing: Drawing, maxWidthPt: number, maxHeightPt: number): Thumbnail {
  const full = placedOnce(drawing, {
    maxWidthMm: mm(FULL_PT.width),
    maxHeightMm: mm(FULL_PT.height),
  });
  const items = full.items.filter(isShown);
  const { left, top, right, bottom } = shapesBox(items) ?? { left: 0, top: 0, right: 1, bottom: 1 };
  const placed: Placed = {
    ...full,
    widthMm: right - left + 2 * PEN_MM,
    heightMm: bottom - top + 2 * PEN_MM,
    items: items.map((item) => moved(item, [PEN_MM - left, PEN_MM - top])),
  };
  const zoom = Math.min(1, maxWidthPt / pt(placed.widthMm), maxHeightPt / pt(placed.heightMm));
  return { placed, zoom, widthPt: pt(placed.widthMm) * zoom, heightPt: pt(placed.heightMm) * zoom };
}
