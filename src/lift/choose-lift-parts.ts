import { type StageResult, staged } from "../figures/index.ts";
import { LIFT_KIND_MODULES } from "./kinds/index.ts";
import type { LiftParts } from "./lift-parts.ts";
import type { LiftPartsInput } from "./lift-parts-input.ts";

/** What will take up the cords, chosen before the folds are laid: its height decides the headrail allowance. */
export function chooseLiftParts(input: LiftPartsInput): StageResult<LiftParts> {
  const { values, workings } = LIFT_KIND_MODULES[input.shade.liftKind].chooseParts(input);
  return staged(values, { workings: () => workings });
}
