import type { StageResult, Worked } from "../../figures/index.ts";
import type { Lift } from "../../shade-plan/index.ts";
import type { LiftInput } from "../lift-input.ts";
import type { LiftParts } from "../lift-parts.ts";
import type { LiftPartsInput } from "../lift-parts-input.ts";
import type { HardwareNeed, HardwareSearch, PartShelf } from "../search/need.ts";

/** What every kind of lift answers. A new kind is one folder with a module of this type. */
export interface LiftKindModule<L extends Lift> {
  /** What will take up the cords, chosen before the folds are laid: its height decides the headrail allowance. */
  chooseParts(input: LiftPartsInput): Worked<LiftParts>;
  /** Lift and rig with the parts that it chose. */
  plan(input: LiftInput): StageResult<L>;
  /** Every set of parts at hand that raises such a shade, the best `most` of them. */
  search(need: HardwareNeed, shelf: PartShelf, most: number): HardwareSearch;
}
