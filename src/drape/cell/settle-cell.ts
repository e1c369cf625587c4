import { bestOf, type ClothNet, netPattern, settleNet, softened } from "../../mechanics/index.ts";
import type { ClothFeel } from "../../shade-plan/index.ts";
import type { ColumnStretch } from "../column-stretch.ts";
import type { DrapeCell } from "./cell.ts";
import { type CellGrid, layLines } from "./cell-grid.ts";
import { cellNet, type HemLoad } from "./cell-net.ts";
import { firstShape } from "./first-shape.ts";
import { nextShape } from "./next-shape.ts";
import type { SettledCell } from "./settled-cell.ts";
import { touching } from "./touching.ts";

/** At rest as far as the eye can tell: the cloth would sink no farther than this on the mean, mm. */
const SEEN_MM = 0.25;
/** Threads soft at first; what may touch what is looked up anew for each round. */
const ROUNDS = [
  { share: 0.1, most: 14, sinkMm: 0.2 },
  { share: 1, most: 12, sinkMm: 0.1 },
  { share: 1, most: 24, sinkMm: 0.05 },
];
/** Swags drawn up on tapes have far to fall, each by itself: so soft at first that they find their place. */
const SWAG_ROUNDS = [
  { share: 0.01, most: 16, sinkMm: 1 },
  { share: 0.1, most: 16, sinkMm: 0.7 },
  { share: 1, most: 30, sinkMm: SEEN_MM },
];
/** From a shape that is near: so soft at first that the cloth follows its rings before it is drawn to length. */
const NEXT_ROUNDS = [
  { share: 0.02, most: 6, sinkMm: 2 },
  { share: 0.2, most: 6, sinkMm: 1 },
  { share: 1, most: 16, sinkMm: SEEN_MM },
];
/** To be looked at for a moment. */
const COARSE_ROUNDS = [{ share: 0.3, most: 10, sinkMm: 1 }];
const REACH_MM = 60;
/** A cell of more nodes than this is left as it was laid: nobody makes a shade of so many folds. */
const MOST_NODES = 2000;

/** What else a cell hangs by. */
export interface SettleCellInput {
  feel: ClothFeel;
  /** How far the pane lies behind the rings, mm. */
  paneMm: number;
  bar?: HemLoad;
  /** The same cell at a height near this one. */
  before?: SettledCell;
  /** With fewer lines and steps. */
  coarse?: boolean;
}

/** The cloth of one cell at rest under its weight: from a shape laid by hand, or from that of a height near it. */
export function settleCell(
  cell: DrapeCell,
  cloth: readonly ColumnStretch[],
  input: SettleCellInput,
): SettledCell {
  const { feel, before, coarse = false } = input;
  const grid = layLines(cloth, coarse);
  const isShirred = cloth.some(({ tapeMm }) => tapeMm !== undefined);
  const laid = () => firstShape(cell, grid, cloth, Math.max(1, feel.thicknessMm));
  if (cell.xMm.length * grid.lines.length > MOST_NODES)
    return { cell, grid, x: laid(), settled: false, iterations: 0, sinkMm: 0 };
  if (coarse) return bringToRest(cell, grid, laid(), COARSE_ROUNDS, input);
  const next = before && bringToRest(cell, grid, nextShape(cell, grid, before), NEXT_ROUNDS, input);
  if (next?.settled === true) return next;
  const anew = bringToRest(cell, grid, laid(), isShirred ? SWAG_ROUNDS : ROUNDS, input);
  return next !== undefined && next.sinkMm < anew.sinkMm ? next : anew;
}

function bringToRest(
  cell: DrapeCell,
  grid: CellGrid,
  first: Float64Array,
  rounds: readonly { share: number; most: number; sinkMm: number }[],
  { feel, paneMm, bar }: SettleCellInput,
): SettledCell {
  const bare = cellNet(cell, grid, feel, bar);
  const pattern = netPattern(bare);
  const stiffness = contactStiffness(bare);
  const { thicknessMm } = feel;
  const wallMm = cell.left === "mirror" ? cell.fromMm : undefined;
  let x = first;
  let iterations = 0;
  let sinkMm = Number.POSITIVE_INFINITY;
  for (const { share, ...round } of rounds) {
    const contacts = touching(grid, cell.xMm.length, x, { thicknessMm, paneMm, wallMm, stiffness });
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
