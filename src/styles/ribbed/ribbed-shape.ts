import type { ShadePoint } from "../../shade/index.ts";
import { flatShape } from "../flat/flat-shape.ts";
import type { ShapeInput, VisibleLine, VisibleShape } from "../visible-shape.ts";

/** A rib as it is drawn on the front: half its face, mm. */
const HALF_FACE_MM = 3.5;

/** The flat shape, with the ribs where they are seen. */
export function ribbedShape(input: ShapeInput, raise: number): VisibleShape {
  const shape = flatShape(input, raise);
  const { ribs } = input.form;
  if (ribs.rows.length === 0 || ribs.face === "back") return shape;
  const width = input.size.finishedWidthMm;
  const { folds } = shape.section;
  const onRow = new Set(ribs.rows);
  const midway = new Set(ribs.between);
  // A row that has gathered lies behind the fold that hangs from it; the rib in a fold's front edge comes forward.
  const rows = shape.section.rows.flatMap(({ number, yMm }, i): VisibleLine[] => {
    const above = folds[i + 1];
    const isHidden = folds[i]?.state !== "flat" || (above !== undefined && above.state !== "flat");
    return onRow.has(number) && !isHidden ? [rib(number, yMm, width)] : [];
  });
  const between = folds.flatMap((fold, i): VisibleLine[] => {
    if (!midway.has(fold.row)) return [];
    const isCovered = folds.slice(i + 1).some(({ bottomYMm }) => bottomYMm > fold.bottomYMm - HALF_FACE_MM);
    const at = fold.state === "flat" ? (fold.upperYMm + fold.lowerYMm) / 2 : fold.bottomYMm - HALF_FACE_MM;
    return isCovered && fold.state !== "flat" ? [] : [rib(fold.row, at, width)];
  });
  return { ...shape, lines: [...shape.lines, ...rows, ...between] };
}

function rib(row: number, yMm: number, widthMm: number): VisibleLine {
  const inMm = Math.min(widthMm / 8, 12);
  const points: ShadePoint[] = [
    [inMm, yMm - HALF_FACE_MM],
    [widthMm - inMm, yMm - HALF_FACE_MM],
    [widthMm - inMm, yMm + HALF_FACE_MM],
    [inMm, yMm + HALF_FACE_MM],
    [inMm, yMm - HALF_FACE_MM],
  ];
  return { kind: "rib", points, row, seenFrom: "front" };
}
