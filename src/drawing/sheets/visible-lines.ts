import type { VisibleLine } from "../../styles/index.ts";
import type { Point, Polyline, Role } from "../model.ts";
import { line } from "./shapes.ts";

const ROLES: Record<VisibleLine["kind"], Role> = {
  edge: "finishedEdge",
  fold: "fold",
  crease: "crease",
  gather: "gather",
  rib: "rib",
  tape: "tape",
  stitch: "stitch",
};

/** Lines that are seen from one side alone are left out from the other. */
export function seenFrom(side: "front" | "back"): (line: VisibleLine) => boolean {
  return (line) => line.seenFrom === undefined || line.seenFrom === side;
}

/** A line of the shape as it is drawn, from the front or turned round. */
export function drawVisibleLine(
  { kind, points, row }: VisibleLine,
  turn: (point: Point) => Point = (point) => point,
): Polyline {
  const part = row === undefined ? {} : { part: `row-${row}` };
  // A rib has its outline; everything else is a line.
  return line(ROLES[kind], points.map(turn), kind === "rib" ? { ...part, closed: true } : part);
}
