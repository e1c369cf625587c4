import type { Brief } from "../job/index.ts";
import type { BoardPlan, ClothPlan, Grid, Lift, Mass, Size } from "../shade/index.ts";

/** What the steps of one shade follow from. */
export interface StepInput {
  brief: Brief;
  size: Size;
  grid: Grid;
  cloth: ClothPlan;
  mass: Mass;
  lift: Lift;
  board: BoardPlan;
}
