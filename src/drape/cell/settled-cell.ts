import type { DrapeCell } from "./cell.ts";
import type { CellGrid } from "./cell-grid.ts";

/** One cell as it hangs. */
export interface SettledCell {
  cell: DrapeCell;
  grid: CellGrid;
  /** Across, down, out of each node, line by line, mm. */
  x: Float64Array;
  settled: boolean;
  iterations: number;
  /** How far the cloth would still sink on the mean, mm. */
  sinkMm: number;
}
