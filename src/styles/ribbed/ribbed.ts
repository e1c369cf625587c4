import { COLUMN_READS, layColumns } from "../flat/columns.ts";
import { FLAT_READS, FOLD_ASKS, layGrid } from "../flat/flat.ts";
import { flatInLine } from "../flat/in-line.ts";
import type { StyleOf } from "../style.ts";
import { judgeRibs } from "./judge-ribs.ts";
import { ribbedShape } from "./ribbed-shape.ts";
import { ribbedSteps } from "./ribbed-steps.ts";

/** The ribbed shade: folds as the flat one, with a rod, lath or batten at every row or at every half fold. */
export const ribbed: StyleOf<typeof COLUMN_READS, typeof FLAT_READS> = {
  reads: { columns: COLUMN_READS, grid: FLAT_READS },
  asks: [{ group: "ribs", keys: ["kind", "face", "at", "rib", "pocketMm", "shorterMm"] }, ...FOLD_ASKS],
  columns: layColumns,
  grid: (input) => {
    const laid = layGrid(input);
    return { ...laid, findings: [...laid.findings, ...judgeRibs(input.shade, laid.values.grid)] };
  },
  inLine: flatInLine,
  shape: ribbedShape,
  steps: ribbedSteps,
};
