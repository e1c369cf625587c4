import type { ShadePoint } from "../../../shade-plan/index.ts";
import { across } from "../../base/visible-lines.ts";
import { flatShape } from "../../folding/flat-shape.ts";
import type { ShapeInput, VisibleLine, VisibleShape } from "../../visible-shape.ts";
import { tucksOf } from "./tucks-of.ts";

/** How far a tuck is drawn standing out, mm. */
const STANDS_MM = 2.5;

/** Crisp creases at every tuck; rings sit behind every second one, so that the others break the folds. */
export function tuckedShape(input: ShapeInput, raise: number): VisibleShape {
  const shape = flatShape(input, raise);
  const { depthMm, face, fromHemMm } = tucksOf(input.form, input.size);
  const width = input.size.finishedWidthMm;
  const { section } = shape;
  const flatFrom = section.folds.find(({ state }) => state === "flat");
  // What hangs flat hangs where it did: only the rows below have been drawn up.
  const risen = flatFrom?.lowerYMm ?? input.grid.headrailMm;
  const heights = fromHemMm.map((up) => input.size.finishedLengthMm - up).filter((y) => y <= risen + 1e-6);
  const [tuckSide, stitchSide] =
    face === "front" ? (["front", "back"] as const) : (["back", "front"] as const);
  const lines = heights.flatMap((y): VisibleLine[] => [
    { kind: "crease", points: across(width, y + depthMm), seenFrom: tuckSide },
    { kind: "stitch", points: across(width, y), seenFrom: stitchSide },
  ]);
  const moving = new Set(section.folds.filter(({ state }) => state !== "flat").map(({ row }) => row));
  return {
    pieces: shape.pieces.map(({ outline, edges }) => ({
      outline,
      edges: edges.filter(({ row }) => row === undefined || moving.has(row)),
    })),
    lines: [...shape.lines, ...lines],
    section: {
      ...section,
      folds: section.folds.map((fold) =>
        fold.state === "flat" && face === "front"
          ? { ...fold, outline: withTucks(fold.outline, heights, depthMm) }
          : fold,
      ),
    },
  };
}

/** The section of a flat stretch, each tuck lying down over its stitching. */
function withTucks(
  outline: readonly ShadePoint[],
  heights: readonly number[],
  depthMm: number,
): ShadePoint[] {
  const [from, to] = [outline[0], outline.at(-1)];
  if (from === undefined || to === undefined) return [...outline];
  const own = heights.filter((y) => y > from[1] + 1e-6 && y + depthMm < to[1]).sort((a, b) => a - b);
  return [
    from,
    ...own.flatMap((y): ShadePoint[] => [
      [0, y],
      [STANDS_MM, y + depthMm],
      [0, y + depthMm * 0.2],
    ]),
    to,
  ];
}
