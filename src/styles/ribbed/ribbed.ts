import { layColumns } from "../flat/columns.ts";
import { FOLD_ASKS, layGrid } from "../flat/flat.ts";
import type { Style } from "../style.ts";
import { judgeRibs } from "./judge-ribs.ts";
import { ribbedShape } from "./ribbed-shape.ts";
import { ribbedSteps } from "./ribbed-steps.ts";

/** The ribbed shade: folds as the flat one, with a rod, lath or batten at every row or at every half fold. */
export const ribbed: Style = {
  asks: [{ group: "ribs", keys: ["kind", "face", "at", "rib", "pocketMm", "shorterMm"] }, ...FOLD_ASKS],
  columns: layColumns,
  grid: (resolved, size, columns, liftParts, book) => {
    const laid = layGrid(resolved, size, columns, liftParts, book);
    return { ...laid, findings: [...laid.findings, ...judgeRibs(resolved, laid.grid)] };
  },
  shape: ribbedShape,
  steps: ribbedSteps,
};
