import { bestOf, type ClothNet, netPattern, settleNet, softened } from "../../mechanics/index.ts";
import type { ClothFeel } from "../../shade-plan/index.ts";
import type { ColumnStretch } from "../column-cloth.ts";
import type { Cell } from "./cell.ts";
import { type CellGrid, layLines } from "./cell-grid.ts";
import { cellNet, type HemLoad } from "./cell-net.ts";
import { firstShape } from "./first-shape.ts";
import { touching } from "./touching.ts";

/** One cell as it hangs. */
export interface SettledCell {
  cell: Cell;
  grid: CellGrid;
  /** Across, down, out of each node, line by line, mm. */
  x: Float64Array;
  settled: boolean;
  iterations: number;
  /** How far the cloth would still sink on the mean, mm. */
  sinkMm: number;
}

/** Threads soft at first; what may touch what is looked up anew for each round. */
const ROUNDS = [
  { share: 0.1, most: 14, sinkMm: 0.2 },
  { share: 1, most: 12, sinkMm: 0.1 },
  { share: 1, most: 24, sinkMm: 0.05 },
];
const REACH_MM = 60;
/** A cell of more nodes than this is left as it was laid: nobody makes a shade of so many folds. */
const MOST_NODES = 2000;
/** At rest as far as the eye can tell: the cloth would sink no farther than this on the mean, mm. */
const SEEN_MM = 0.25;

/** The cloth of one cell at rest under its weight, from a shape laid by hand. */
export function settleCell(
  cell: Cell,
  cloth: readonly ColumnStretch[],
  feel: ClothFeel,
  paneMm: number,
  bar?: HemLoad,
): SettledCell {
  const grid = layLines(cloth);
  const across = cell.xMm.length;
  const apartMm = Math.max(1, feel.thicknessMm);
  const first = firstShape(cell, grid, cloth, apartMm);
  if (across * grid.lines.length > MOST_NODES) {
    return { cell, grid, x: first, settled: false, iterations: 0, sinkMm: 0 };
  }
  const bare = cellNet(cell, grid, feel, bar);
  const pattern = netPattern(bare);
  const stiffness = contactStiffness(bare);
  let x = first;
  let iterations = 0;
  let sinkMm = Number.POSITIVE_INFINITY;
  for (const { share, ...round } of ROUNDS) {
    const contacts = touching(grid, across, x, { thicknessMm: feel.thicknessMm, paneMm, stiffness });
    const found = settleNet(softened({ ...bare, contacts }, share), pattern, x, {
      ...round,
      reachMm: REACH_MM,
    });
    iterations += found.iterations;
    sinkMm = found.residual;
    x = bestOf(found);
  }
  return { cell, grid, x, settled: sinkMm <= SEEN_MM, iterations, sinkMm };
}

/** A node pushed by the weight of a mean one sinks by an eighth of a millimetre. */
function contactStiffness({ loadN, nodeCount }: ClothNet): number {
  const weight = loadN.reduce((sum, newton) => sum + newton, 0);
  return (8 * weight) / nodeCount;
}
