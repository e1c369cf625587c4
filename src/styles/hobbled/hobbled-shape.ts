import type { ShadePoint } from "../../shade/index.ts";
import { flatShape } from "../flat/flat-shape.ts";
import { hangingFold } from "../folding/raised-shape.ts";
import type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "../visible-shape.ts";

/**
 * A soft fold hangs below every tape mark, lowered or raised, the lowest over the hem. Seen from the room each fold
 * lies over the one below; from behind, the tapes run up the columns.
 */
export function hobbledShape(input: ShapeInput, raise: number): VisibleShape {
  const shape = flatShape(input, raise);
  const { form, grid, size } = input;
  const [bottom] = form.stretches;
  const [lowest] = shape.section.rows;
  const tapes = grid.columns.map(
    ({ xMm }): VisibleLine => ({
      kind: "tape",
      points: [
        [xMm, 0],
        [xMm, shape.section.hemYMm],
      ],
      seenFrom: "back",
    }),
  );
  if (bottom === undefined || lowest === undefined || bottom.clothMm - bottom.cordMm < 1e-6)
    return { ...shape, lines: [...shape.lines, ...tapes] };
  const fold = hangingFold({
    row: 0,
    upperYMm: lowest.yMm,
    gapMm: bottom.cordMm,
    clothMm: bottom.clothMm,
    ...(input.foldDepthMm === undefined ? {} : { depthMm: input.foldDepthMm }),
  });
  const across = (y: number): ShadePoint[] => [
    [0, y],
    [size.finishedWidthMm, y],
  ];
  const overHem: VisiblePiece = {
    outline: [...across(fold.upperYMm), ...across(fold.bottomYMm).reverse()],
    edges: [{ kind: "edge", points: across(fold.bottomYMm), row: 0 }],
  };
  const [hem, ...others] = shape.pieces;
  const { section } = shape;
  const bottomYMm = Math.max(section.bottomYMm, fold.bottomYMm);
  return {
    pieces: [...(hem === undefined ? [] : [hem]), overHem, ...others],
    lines: [
      {
        kind: "edge",
        points: [
          [0, bottomYMm],
          [0, 0],
          [size.finishedWidthMm, 0],
          [size.finishedWidthMm, bottomYMm],
        ],
      },
      ...shape.lines.slice(1),
      ...tapes,
    ],
    section: {
      ...section,
      folds: [fold, ...section.folds],
      bottomYMm,
      outMm: Math.max(section.outMm, fold.outMm),
    },
  };
}
