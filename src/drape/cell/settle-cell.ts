import { type ClothNet, netPattern, settleNet } from "../../mechanics/index.ts";
import type { ClothFeel } from "../../shade/index.ts";
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
  /** How far a node would still move, mm. */
  residualMm: number;
}

/** What may touch what is looked up anew so many times; then it no longer changes what is seen. */
const ROUNDS = 3;
const STILL_MM = 0.05;
const FIRST = { most: 40, stillMm: 1, reachMm: 60, stiffening: [0.01, 1] };
const AGAIN = { most: 30, stillMm: STILL_MM, reachMm: 40, stiffening: [1] };
/** Seen no different from one at rest, mm. */
const SEEN_MM = 1.5;

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
  const bare = cellNet(cell, grid, feel, bar);
  const pattern = netPattern(bare);
  const stiffness = contactStiffness(bare);
  let x = first;
  let iterations = 0;
  let residualMm = Number.POSITIVE_INFINITY;
  let settled = false;
  for (let round = 0; round < ROUNDS; round++) {
    const contacts = touching(grid, across, x, { thicknessMm: feel.thicknessMm, paneMm, stiffness });
    const found = settleNet({ ...bare, contacts }, pattern, x, round === 0 ? FIRST : AGAIN);
    iterations += found.iterations;
    residualMm = found.residual;
    settled = found.kind === "converged";
    x = found.kind === "converged" ? found.value : found.best;
    if (!settled && residualMm > 10 * SEEN_MM) break;
  }
  return { cell, grid, x, settled: settled || residualMm < SEEN_MM, iterations, residualMm };
}

/** A node pushed by ten times the weight of a mean one sinks by half a millimetre. */
function contactStiffness({ loadN, nodeCount }: ClothNet): number {
  const weight = loadN.reduce((sum, newton) => sum + newton, 0);
  return (20 * weight) / nodeCount;
}
