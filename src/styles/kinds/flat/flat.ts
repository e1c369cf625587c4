import { alsoFinding } from "../../../figures/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { flatInLine } from "../../folding/flat-in-line.ts";
import { FOLD_ASKS, FOLD_READS, layGrid } from "../../folding/fold-grid.ts";
import { judgeRibs } from "../../folding/judge-ribs.ts";
import type { StyleOf } from "../../style.ts";

/** The flat Roman shade: smooth when lowered, even or graduated folds when raised. */
export const flat: StyleOf<typeof COLUMN_READS, typeof FOLD_READS> = {
  reads: { columns: COLUMN_READS, grid: FOLD_READS },
  asks: FOLD_ASKS,
  columns: layColumns,
  grid: (input) => {
    const { shade } = input;
    const laid = layGrid(input);
    return shade.making.ribs.kind === "none"
      ? laid
      : alsoFinding(laid, () => judgeRibs(shade, laid.values.grid));
  },
  inLine: flatInLine,
  steps: () => [],
};
