import type { Facets, Point } from "../model.ts";
import { litHex } from "../picture/lit-colour.ts";
import type { PlacedFacets } from "../placed.ts";
import { commonOf } from "./scaling.ts";

/** Wide enough that no seam shows between two faces, at any zoom of a screen. */
const EDGE_MM = 0.2;

/** Faces of one colour that follow each other become one set of lines. */
export function placeFacets(facets: Facets, toPage: (at: Point) => Point): PlacedFacets {
  const faces: { lines: Point[][]; hex: string }[] = [];
  for (const { points, colour, light } of facets.faces) {
    const hex = litHex(colour, light);
    const line = points.map(toPage);
    const last = faces.at(-1);
    if (last?.hex === hex) last.lines.push(line);
    else faces.push({ lines: [line], hex });
  }
  return { kind: "facets", ...commonOf(facets), faces, edgeMm: EDGE_MM };
}
