import { type Figure, figureRule, type Worked } from "../figures/index.ts";
import { LOFT, layersThicknessMm } from "../job/index.ts";
import { flatSize } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { BoardInput } from "./board-input.ts";

const HUNG_STACK = figureRule({
  id: "board.stack-depth",
  label: "Depth of the raised stack, as sewn",
  symbol: "d",
  unit: "mm",
  formula: "f + h",
  inputs: {
    f: ["mm", "folds in front of the flat cloth", "figure:folds.out"],
    h: ["mm", "hem pressed back behind it", "figure:folds.*"],
  },
  cite: cite("heavy-elastica", "gathered folds pressed by those in front of them"),
  compute: ({ f, h }) => f + h,
});

const THICK_STACK = figureRule({
  id: "board.stack-depth",
  label: "Depth of the raised stack",
  symbol: "d",
  unit: "mm",
  formula: "(2·p + 2)·t·k·f",
  inputs: {
    p: ["count", "rows of rings", "figure:shape.rows", "fold/rows", "fold/largestSpacingMm"],
    t: ["mm", "thickness of all layers", "shade/face", "shade/lining", "shade/interlining", "shade/blackout"],
    k: ["ratio", "loft of gathered folds"],
    f: [
      "ratio",
      "cloth for each area of the shade",
      "gather/widthFullness",
      "gather/lengthFullness",
      "gather/drawInMm",
      "figure:shape.*",
      "figure:measure.finished-*",
    ],
  },
  cite: LOFT.cite,
  compute: ({ p, t, k, f }) => (2 * p + 2) * t * k * f,
});

const RECESS_NEEDED = figureRule({
  id: "board.recess-needed",
  label: "Depth of recess needed",
  symbol: "r",
  unit: "mm",
  formula: "b + d + o",
  inputs: {
    b: ["mm", "depth of the board", "shade/mount", "board/section"],
    d: ["mm", "stack in front of the board", "figure:board.stack-depth", "figure:folds.out"],
    o: ["mm", "handles and the like, with their clearance", "mount/handClearanceMm", "opening/obstructions"],
  },
  cite: cite("geometry", "board depth + stack + obstructions"),
  compute: ({ b, d, o }) => b + d + o,
});

/** Depth of the gathered stack from front to back, what of it stands in front of the board, and, inside, the recess that it needs, mm. */
export interface RecessDepths {
  stackMm: number;
  frontMm: number;
  neededMm?: number;
}

/** Depths from the glass to the front of the raised stack. */
export function recessDepths(input: BoardInput): Worked<RecessDepths> {
  const { shade, folds } = input;
  const stack =
    folds === undefined ? thickStack(input) : HUNG_STACK.figure({ f: folds.outMm, h: folds.behindMm });
  // What is pressed back lies behind the board's front; only the rest needs room before it.
  const frontMm = folds?.outMm ?? stack.value;
  if (shade.mount !== "inside") return { values: { stackMm: stack.value, frontMm }, workings: [stack] };
  const needed = recessNeeded(input, frontMm);
  return { values: { stackMm: stack.value, frontMm, neededMm: needed.value }, workings: [stack, needed] };
}

/** Where cloth is drawn in both ways nothing better is known than how thick it lies. */
function thickStack({ shade, size, grid, form }: BoardInput): Figure {
  const flat = flatSize(size, form, "face");
  return THICK_STACK.figure({
    p: grid.rows.length,
    t: layersThicknessMm(shade.cloths),
    k: LOFT.value,
    f: (flat.widthMm * flat.lengthMm) / (size.finishedWidthMm * size.finishedLengthMm),
  });
}

/** Board, what stands in front of it, and what stands out from the glass. */
function recessNeeded({ shade }: BoardInput, frontMm: number): Figure {
  const standsOut = (shade.opening.obstructions ?? []).reduce((most, o) => Math.max(most, o.projectionMm), 0);
  return RECESS_NEEDED.figure({
    b: shade.board.depthMm,
    d: frontMm,
    o: standsOut > 0 ? standsOut + shade.making.mount.handClearanceMm : 0,
  });
}
