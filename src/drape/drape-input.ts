import type { StyleKind } from "../job/index.ts";
import type { BoardPlan, ClothFeel, Folds, Form, Grid, Mass, Size } from "../shade-plan/index.ts";

/** What the hanging cloth of one shade follows from. */
export interface DrapeInput {
  style: StyleKind;
  size: Size;
  grid: Grid;
  form: Form;
  feel: ClothFeel;
  mass: Mass;
  board: Pick<BoardPlan, "depthMm" | "thicknessMm" | "leftMm" | "lengthMm">;
  folds?: Folds;
}
