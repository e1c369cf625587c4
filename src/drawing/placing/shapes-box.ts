import type { PlacedItem } from "../placed.ts";
import { type Box, emptyBox, include } from "./box.ts";

/** The upright rectangle round placed shapes, words and pens left out; undefined where there are none. */
export function shapesBox(items: readonly PlacedItem[]): Box | undefined {
  const box = emptyBox();
  for (const item of items) {
    if (item.kind === "path") for (const point of item.lines.flat()) include(box, point);
    if (item.kind === "facets")
      for (const { lines } of item.faces) for (const point of lines.flat()) include(box, point);
    if (item.kind === "circle") include(box, item.centre, item.radiusMm);
  }
  return box.left > box.right ? undefined : box;
}
