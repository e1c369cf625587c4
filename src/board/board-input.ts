import type { ResolvedShade } from "../job/index.ts";
import type { Folds, Form, Grid, Lift, Mass, Size } from "../shade-plan/index.ts";

/** What the board of one shade follows from. */
export interface BoardInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
  lift: Lift;
  /** Where they hang in one plane and are known. */
  folds?: Folds;
}
