import { cite } from "../../sources/index.ts";
import { layColumns } from "../flat/columns.ts";
import { layGatheredHem } from "../gathering/gathered-hem.ts";
import { gatheredHemShape } from "../gathering/gathered-hem-shape.ts";
import { gatheredHemSteps } from "../gathering/gathered-hem-steps.ts";
import type { Style } from "../style.ts";

/**
 * The gathered festoon: a gathered head, scallops at the hem alone, full only when it is drawn up.
 * In the United Kingdom it is an Austrian blind, and “festoon” there is our Austrian.
 */
export const festoon: Style = {
  asks: [
    { group: "gather", keys: ["widthFullness", "hemExtraMm", "frillMm", "frillFullness", "weight"] },
    { group: "columns", keys: ["count", "largestSpacingMm"] },
    { group: "fold", keys: ["rows", "largestSpacingMm", "headrailMm"] },
  ],
  columns: layColumns,
  grid: (resolved, size, columns, liftParts, book) =>
    layGatheredHem(resolved, size, columns, liftParts, book, cite("austrian-uk", "width × 2")),
  shape: gatheredHemShape,
  steps: (input) =>
    gatheredHemSteps(
      input,
      "scallops",
      "Raise the shade by a hand’s breadth and pull each scallop forward and down in its middle. Then raise it slowly, stop at every row and spread the ruffles so that each scallop is as full as the next.",
    ),
};
