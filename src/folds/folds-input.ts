import { type ReadOf, reads } from "../job/index.ts";
import type { Form, Grid, Mass, Size } from "../shade-plan/index.ts";

/** What the folds read of a shade. */
export const FOLDS_READS = reads({
  shade: ["shadeId", "path", "units", "cloths", "board", "bar", "rib", "parts"],
  making: ["columns", "lining"],
});

/** What the folds of one shade follow from. */
export interface FoldsInput {
  shade: ReadOf<typeof FOLDS_READS>;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
}
