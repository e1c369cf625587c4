import type { Brief } from "../job/index.ts";
import type { Grid, Lift, Size } from "../shade/index.ts";

export interface CautionInput {
  brief: Brief;
  size: Size;
  grid: Grid;
  lift: Lift;
}
