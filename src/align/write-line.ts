import type { WorkingBook } from "../figures/index.ts";
import type { Grid, RowLayout, Size } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";

/** The figures of one shade that follows the room: where its first row comes to stand, and what it gave. */
export function writeLine(layout: RowLayout, size: Size, grid: Grid, book: WorkingBook): void {
  const topMm = size.topAboveFloorMm;
  if (topMm !== undefined) {
    book.figure("align.first-row", {
      label: "First row above the floor",
      symbol: "z",
      unit: "mm",
      formula: "H − L + d",
      given: {
        H: [topMm, "mm", "top line above the floor"],
        L: [size.finishedLengthMm, "mm", "finished length"],
        d: [grid.bottomSectionMm, "mm", "hem to first row"],
      },
      cite: cite("geometry"),
      compute: ({ H, L, d }) => H - L + d,
    });
  }
  book.figure("align.headrail-extra", {
    label: "More headrail than needed, for the line",
    symbol: "x",
    unit: "mm",
    formula: "T − T_min",
    given: {
      T: [grid.headrailMm, "mm", "headrail allowance"],
      T_min: [layout.headrailMm - layout.headrailExtraMm, "mm", "least headrail allowance"],
    },
    cite: cite("geometry"),
    compute: ({ T, T_min }) => T - T_min,
  });
  book.figure("align.hem-extra", {
    label: "Hem section longer than wanted, for the line",
    symbol: "y",
    unit: "mm",
    formula: "d − w",
    given: {
      d: [grid.bottomSectionMm, "mm", "hem to first row"],
      w: [layout.bottomMm - layout.bottomExtraMm, "mm", "as the shade would have it at this spacing"],
    },
    cite: cite("geometry"),
    compute: ({ d, w }) => d - w,
  });
}
