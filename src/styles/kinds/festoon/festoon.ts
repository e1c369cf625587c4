import { cite } from "../../../sources/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { layGatheredHem } from "../../gathering/gathered-hem.ts";
import { gatheredHemSteps } from "../../gathering/gathered-hem-steps.ts";
import { GATHERED_READS } from "../../gathering/gathered-reads.ts";
import type { StyleOf } from "../../style.ts";

/**
 * The gathered festoon: a gathered head, scallops at the hem alone, full only when it is drawn up.
 * In the United Kingdom it is an Austrian blind, and “festoon” there is our Austrian.
 */
export const festoon: StyleOf<typeof COLUMN_READS, typeof GATHERED_READS> = {
  reads: { columns: COLUMN_READS, grid: GATHERED_READS },
  asks: [
    {
      group: "gather",
      keys: [
        "widthFullness",
        "hemExtraMm",
        "frillMm",
        "frillFullness",
        "frillEdges",
        "frillDouble",
        "weight",
      ],
    },
    { group: "columns", keys: ["count", "largestSpacingMm"] },
    { group: "fold", keys: ["rows", "largestSpacingMm", "headrailMm"] },
  ],
  columns: layColumns,
  grid: (input) => layGatheredHem(input, cite("austrian-uk", "width × 2")),
  inLine: "the scallops of a festoon hang below its rows",
  steps: (input) =>
    gatheredHemSteps(
      input,
      "scallops",
      "Raise the shade by a hand’s breadth and pull each scallop forward and down in its middle. Then raise it slowly, stop at every row and spread the ruffles so that each scallop is as full as the next.",
    ),
};
