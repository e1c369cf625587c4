import { type ReadOf, reads } from "../job/index.ts";
import type { Form, GatheredFolds, Grid, Lift, Mass, Size } from "../shade-plan/index.ts";

/** What the board reads of its shade. */
export const BOARD_READS = reads({
  shade: ["shadeId", "path", "units", "mount", "opening", "cloths", "parts", "eye", "bar", "board"],
  making: ["mount", "board"],
});
/** The part of a resolved shade that `BOARD_READS` names. */
export type BoardShade = ReadOf<typeof BOARD_READS>;

/** What the board of one shade follows from. */
export interface BoardInput {
  shade: BoardShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
  lift: Lift;
  /** Where they hang in one plane and are known. */
  folds?: GatheredFolds | undefined;
}
