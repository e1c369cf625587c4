import { type ReadOf, reads } from "../job/index.ts";
import type { Grid, Lift, Mass, Size } from "../shade-plan/index.ts";

/** What planning a shade that hangs already reads of it. */
export const EXISTING_READS = reads({
  shade: ["shadeId", "path", "units", "existing", "parts", "rearCords", "cord"],
  making: ["fold", "columns", "lift"],
});
export type ExistingShade = ReadOf<typeof EXISTING_READS>;

/** What the work on a shade that hangs already follows from. */
export interface ExistingInput {
  shade: ExistingShade;
  size: Size;
  grid: Grid;
  mass: Mass;
  lift: Lift;
  /** Least flat cloth above the gathered rings, mm. */
  headrailNeededMm: number;
}
