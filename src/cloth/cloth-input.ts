import type { ResolvedShade } from "../job/index.ts";
import type { Form, Grid, Size } from "../shade-plan/index.ts";

/** What the cloth of one shade follows from. */
export interface ClothInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
}
