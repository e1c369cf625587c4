import { cite } from "../../sources/index.ts";
import { layColumns } from "../flat/columns.ts";
import { layGatheredHem } from "../gathering/gathered-hem.ts";
import { gatheredHemShape } from "../gathering/gathered-hem-shape.ts";
import { gatheredHemSteps } from "../gathering/gathered-hem-steps.ts";
import type { Style } from "../style.ts";

/** The gathered balloon, or cloud: full across, its hem drawn up into poufs that stay. */
export const gatheredBalloon: Style = {
  asks: [
    { group: "gather", keys: ["widthFullness", "hemExtraMm", "weight", "frillMm"] },
    { group: "columns", keys: ["count", "largestSpacingMm"] },
    { group: "fold", keys: ["rows", "largestSpacingMm", "headrailMm"] },
  ],
  columns: layColumns,
  grid: (resolved, size, columns, liftParts, book) =>
    layGatheredHem(resolved, size, columns, liftParts, book, cite("balloon-2009", "width × 2.5")),
  shape: gatheredHemShape,
  steps: (input) =>
    gatheredHemSteps(
      input,
      "poufs",
      "Lowered, pull the cloth between the bundles of rings forward and down, and spread it so that every pouf is round. Then raise the shade slowly, stop at every row and pull the new fold over the pouf below.",
    ),
};
