import type { Brief } from "../job/index.ts";
import type { Form, Grid, Size } from "../shade-plan/index.ts";

/** What the cloth of one shade follows from. */
export interface ClothInput {
  brief: Brief;
  size: Size;
  grid: Grid;
  form: Form;
}
