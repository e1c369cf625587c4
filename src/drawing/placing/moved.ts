import type { Point } from "../model.ts";
import type { PlacedItem } from "../placed.ts";

/** The same item elsewhere on the paper, mm. */
export function moved(item: PlacedItem, [dx, dy]: Point): PlacedItem {
  const move = ([x, y]: Point): Point => [x + dx, y + dy];
  switch (item.kind) {
    case "path":
      return { ...item, lines: item.lines.map((line) => line.map(move)) };
    case "facets":
      return {
        ...item,
        faces: item.faces.map((face) => ({ ...face, lines: face.lines.map((line) => line.map(move)) })),
      };
    case "circle":
      return { ...item, centre: move(item.centre) };
    case "text":
      return { ...item, at: move(item.at) };
  }
}
