import { type ReadOf, type ResolvedRates, reads } from "../job/index.ts";
import type { ClothPlan, ExistingPlan, Form, Grid, Lift, MountedBoard, Size } from "../shade-plan/index.ts";

/** What the cost of a shade reads of it. */
export const COST_READS = reads({
  shade: [
    "shadeId",
    "path",
    "units",
    "cloths",
    "bandCloths",
    "cord",
    "ring",
    "eye",
    "turnEye",
    "locks",
    "tube",
    "drives",
    "bar",
    "rib",
    "board",
  ],
  making: ["ribs", "board", "lift"],
});
/** The part of a resolved shade that `COST_READS` names. */
export type CostShade = ReadOf<typeof COST_READS>;

/** What a shade takes follows from. */
export interface NeedsInput {
  shade: CostShade;
  size: Size;
  grid: Grid;
  form: Form;
  cloth: ClothPlan;
  lift: Lift;
  board: MountedBoard;
  /** It hangs already: only what is done to it is bought. */
  existing?: ExistingPlan | undefined;
}

/** What the cost of one shade follows from. */
export interface CostInput extends NeedsInput {
  rates: ResolvedRates;
}
