import type { ResolvedShade } from "../job/index.ts";
import type { Grid, Lift, SafetyReview, Size } from "../shade-plan/index.ts";

export interface CautionInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  lift: Lift;
  /** The review of the cords, where it was made. */
  review?: SafetyReview;
}
