import { alsoFinding } from "../../../figures/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { flatInLine } from "../../folding/flat-in-line.ts";
import { FOLD_ASKS, FOLD_READS, layGrid } from "../../folding/fold-grid.ts";
import { judgeRibs } from "../../folding/judge-ribs.ts";
import type { StyleOf } from "../../style.ts";
import { ribbedSteps } from "./ribbed-steps.ts";

/** The ribbed shade: folds as the flat one, with a rod, lath or batten at every row or at every half fold. */
export const ribbed: StyleOf<typeof COLUMN_READS, typeof FOLD_READS> = {
  reads: { columns: COLUMN_READS, grid: FOLD_READS },
  asks: [{ group: "ribs", keys: ["kind", "face", "at", "rib", "pocketMm", "shorterMm"] }, ...FOLD_ASKS],
  columns: layColumns,
  grid: (input) => {
    const laid = layGrid(input);
    return alsoFinding(laid, () => judgeRibs(input.shade, laid.values.grid));
  },
  inLine: flatInLine,
  steps: ribbedSteps,
};
