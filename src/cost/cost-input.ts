import type { Brief } from "../job/index.ts";
import type { BoardPlan, ClothPlan, Grid, Lift, Size } from "../shade/index.ts";

/** What the cost of one shade follows from. */
export interface CostInput {
  brief: Brief;
  size: Size;
  grid: Grid;
  cloth: ClothPlan;
  lift: Lift;
  board: BoardPlan;
}
