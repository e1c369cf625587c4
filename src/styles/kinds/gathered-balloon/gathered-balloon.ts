import { cite } from "../../../sources/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { layGatheredHem } from "../../gathering/gathered-hem.ts";
import { gatheredHemSteps } from "../../gathering/gathered-hem-steps.ts";
import { GATHERED_READS } from "../../gathering/gathered-reads.ts";
import type { StyleOf } from "../../style.ts";

/** The gathered balloon, or cloud: full across, its hem drawn up into poufs that stay. */
export const gatheredBalloon: StyleOf<typeof COLUMN_READS, typeof GATHERED_READS> = {
  reads: { columns: COLUMN_READS, grid: GATHERED_READS },
  asks: [
    {
      group: "gather",
      keys: ["widthFullness", "hemExtraMm", "weight", "frillMm", "frillEdges", "frillDouble"],
    },
    { group: "columns", keys: ["count", "largestSpacingMm"] },
    { group: "fold", keys: ["rows", "largestSpacingMm", "headrailMm"] },
  ],
  columns: layColumns,
  grid: (input) => layGatheredHem(input, cite("balloon-2009", "width × 2.5")),
  inLine: "the poufs of a balloon shade hang below its rows",
  steps: (input) =>
    gatheredHemSteps(
      input,
      "poufs",
      "Lowered, pull the cloth between the bundles of rings forward and down, and spread it so that every pouf is round. Then raise the shade slowly, stop at every row and pull the new fold over the pouf below.",
    ),
};
