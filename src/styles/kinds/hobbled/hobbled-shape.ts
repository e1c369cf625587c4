import type { ShadePoint } from "../../../shade-plan/index.ts";
import { headCloth, sidesAndTop, tapes } from "../../base/visible-lines.ts";
import { hemPiece } from "../../folding/flat-shape.ts";
import { hungShape } from "../../folding/hung-shape.ts";
import { type FoldState, hangingFold, type RaisedShape, standingShape } from "../../folding/raised-shape.ts";
import type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "../../visible-shape.ts";

/** Lower corners of a soft fold as they are drawn. */
const CORNER_MM = 16;
const CORNER_STEPS = 5;

/**
 * A soft fold hangs below every tape mark, lowered or raised, the lowest over the hem. Seen from the room each fold
 * lies over the one below; from behind, the tapes run up the columns.
 */
export function hobbledShape(input: ShapeInput, raise: number): VisibleShape {
  const width = input.size.finishedWidthMm;
  const section = sectionOf(input, raise);
  const top = section.folds.at(-1)?.upperYMm ?? 0;
  return {
    pieces: [
      hemPiece(section, input.grid, width),
      ...section.folds.map((fold) => softFold(fold, width)),
      headCloth(width, top),
    ],
    lines: [sidesAndTop(width, top), ...tapes(input.grid.columns, section.hemYMm)],
    section,
  };
}

/** The section with the fold that hangs over the hem, which no height opens or closes. */
function sectionOf({ form, foldDepthMm, grid, hang }: ShapeInput, raise: number): RaisedShape {
  const section = standingShape(grid, form.stretches, raise, foldDepthMm);
  const [bottom] = form.stretches;
  const [lowest] = section.rows;
  if (bottom === undefined || lowest === undefined || bottom.clothMm - bottom.cordMm < 1e-6) {
    return hungShape(section, grid, hang);
  }
  const fold = hangingFold({
    row: 0,
    upperYMm: lowest.yMm,
    gapMm: bottom.cordMm,
    clothMm: bottom.clothMm,
    ...(foldDepthMm === undefined ? {} : { depthMm: foldDepthMm }),
  });
  return hungShape(section, grid, hang, fold);
}

/** A roll of cloth with soft lower corners; the one below shows past them. */
function softFold({ row, upperYMm, bottomYMm }: FoldState, width: number): VisiblePiece {
  const r = Math.min(CORNER_MM, (bottomYMm - upperYMm) / 3, width / 8);
  const corner = (x: number, towards: 1 | -1): ShadePoint[] =>
    Array.from({ length: CORNER_STEPS + 1 }, (_, i) => {
      const angle = ((towards > 0 ? i : CORNER_STEPS - i) / CORNER_STEPS) * (Math.PI / 2);
      return [x + towards * r * (1 - Math.cos(angle)), bottomYMm - r * (1 - Math.sin(angle))];
    });
  const lower = [...corner(0, 1), ...corner(width, -1)];
  const side = (x: number): VisibleLine => ({
    kind: "edge",
    points: [
      [x, upperYMm],
      [x, bottomYMm - r],
    ],
    row,
  });
  return {
    outline: [[0, upperYMm], ...lower, [width, upperYMm]],
    edges: [{ kind: row === 0 ? "edge" : "crease", points: lower, row }, side(0), side(width)],
  };
}
