import type { Form } from "../../shade-plan/index.ts";
import type { VisibleLine } from "../visible-shape.ts";
import type { ScallopedLine } from "./scalloped-line.ts";

/** A frill on the lower edge: the line along which it is sewn, and its ruffles down to the edge. */
export function frillLines(cornersYMm: number, frill: Form["frill"], across: ScallopedLine): VisibleLine[] {
  if (frill === undefined || frill.edges === "sides") return [];
  const { depthMm } = frill;
  const edge = across(cornersYMm);
  const seam = across(cornersYMm - depthMm);
  const ruffles = seam.slice(1, -1).map((from, i): VisibleLine => {
    const to = edge[i + 1] ?? from;
    // By turns they reach the edge and end halfway.
    const reach = i % 2 === 0 ? 1 : 0.5;
    return {
      kind: "gather",
      seenFrom: "front",
      points: [from, [to[0], from[1] + reach * (to[1] - from[1])]],
    };
  });
  return [{ kind: "stitch", seenFrom: "front", points: seam }, ...ruffles];
}
