import type { CordLock, ResolvedShade } from "../job/index.ts";
import type { Form, Grid, Mass, Size } from "../shade-plan/index.ts";

/** What the lift and the rig of one shade follow from. */
export interface LiftInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
  /** As `chooseLock` chose it before the folds were laid. */
  lock: CordLock;
}
