import type { Form, Grid, Lift, SafetyReview, Size } from "../shade-plan/index.ts";
import type { SafetyShade } from "./safety-reads.ts";

export interface CautionInput {
  shade: SafetyShade;
  size: Size;
  grid: Grid;
  form: Pick<Form, "haberdashery">;
  lift: Lift;
  /** The review of the cords, where it was made. */
  review?: SafetyReview;
}
