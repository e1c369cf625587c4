import type { VisibleLine } from "../../styles/index.ts";
import type { Point, Polyline, Role } from "../model.ts";
import { line } from "./shapes.ts";

const ROLES: Record<VisibleLine["kind"], Role> = {
  edge: "finishedEdge",
  fold: "fold",
  crease: "crease",
  gather: "gather",
  rib: "fold",
  tape: "tape",
  stitch: "stitch",
};

/** A line of the shape as it is drawn, from the front or turned round. */
export function drawVisibleLine(
  { kind, points, row }: VisibleLine,
  turn: (point: Point) => Point = (point) => point,
): Polyline {
  return line(ROLES[kind], points.map(turn), row === undefined ? {} : { part: `row-${row}` });
}
