import type { ResolvedShade } from "../job/index.ts";
import type {
  ClothPlan,
  ExistingPlan,
  Form,
  Grid,
  Lift,
  Mass,
  MountedBoard,
  Size,
  StyleStep,
} from "../shade-plan/index.ts";

/** What the steps of one shade follow from. */
export interface StepInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  cloth: ClothPlan;
  mass: Mass;
  lift: Lift;
  board: MountedBoard;
  /** It hangs already: only what is done to it is told. */
  existing?: ExistingPlan | undefined;
  /** What the style adds to the usual steps. */
  styleSteps: StyleStep[];
}
