import type { ResolvedShade } from "../job/index.ts";
import type { BoardPlan, ClothPlan, Form, Grid, Lift, Size } from "../shade-plan/index.ts";

/** What the cost of one shade follows from. */
export interface CostInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  cloth: ClothPlan;
  lift: Lift;
  board: BoardPlan;
}
