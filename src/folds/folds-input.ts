import type { ResolvedShade } from "../job/index.ts";
import type { Form, Grid, Mass, Size } from "../shade-plan/index.ts";

/** What the folds of one shade follow from. */
export interface FoldsInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
}
