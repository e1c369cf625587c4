import { type Figure, figureRule } from "../figures/index.ts";
import type { Grid, RowLayout, Size } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";

/** What a shade that follows the room has its rows by, besides the room's own wishes. */
const LAID_BY = [
  "fold/rows",
  "fold/largestSpacingMm",
  "fold/headrailMm",
  "fold/spacingMm",
  "fold/skirtMm",
  "fold/hemBarMm",
  "fold/ringStackMm",
  "fold/stackMm",
  "fold/smallestSpacingMm",
  "fold/rule",
  "opening/sillAboveFloorMm",
  "figure:measure.finished-length",
  "figure:shape.headrail-needed",
] as const;

const FIRST_ROW = figureRule({
  id: "align.first-row",
  label: "First row above the floor",
  symbol: "z",
  unit: "mm",
  formula: "H − L + d",
  inputs: {
    H: [
      "mm",
      "top line above the floor",
      "opening/sillAboveFloorMm",
      "opening/heightsMm",
      "mount/overlapAboveMm",
      "shade/mount",
    ],
    L: ["mm", "finished length", "figure:measure.finished-length"],
    d: ["mm", "hem to first row", ...LAID_BY],
  },
  cite: cite("geometry"),
  compute: ({ H, L, d }) => H - L + d,
});

const HEADRAIL_EXTRA = figureRule({
  id: "align.headrail-extra",
  label: "More headrail than needed, for the line",
  symbol: "x",
  unit: "mm",
  formula: "T − T_min",
  inputs: {
    T: ["mm", "headrail allowance", ...LAID_BY],
    T_min: ["mm", "least headrail allowance", "fold/headrailMm", "figure:shape.headrail-needed"],
  },
  cite: cite("geometry"),
  compute: ({ T, T_min }) => T - T_min,
});

const HEM_EXTRA = figureRule({
  id: "align.hem-extra",
  label: "Hem section longer than wanted, for the line",
  symbol: "y",
  unit: "mm",
  formula: "d − w",
  inputs: {
    d: ["mm", "hem to first row", ...LAID_BY],
    w: ["mm", "as the shade would have it at this spacing", "fold/skirtMm", "fold/hemBarMm", "fold/rule"],
  },
  cite: cite("geometry"),
  compute: ({ d, w }) => d - w,
});

/** A shade that is laid as its room has it. */
export interface LineFiguresInput {
  layout: RowLayout;
  size: Size;
  grid: Grid;
}

/** The figures of one shade that follows the room: where its first row comes to stand, and what it gave, mm. */
export function lineFigures({ layout, size, grid }: LineFiguresInput): Figure[] {
  const { topAboveFloorMm: H, finishedLengthMm: L } = size;
  const d = grid.bottomSectionMm;
  return [
    ...(H === undefined ? [] : [FIRST_ROW.figure({ H, L, d })]),
    HEADRAIL_EXTRA.figure({ T: grid.headrailMm, T_min: layout.headrailMm - layout.headrailExtraMm }),
    HEM_EXTRA.figure({ d, w: layout.bottomMm - layout.bottomExtraMm }),
  ];
}
