import { type StageResult, staged } from "../figures/index.ts";
import type { Lift } from "../shade-plan/index.ts";
import { judgeExamples } from "./judge-examples.ts";
import { LIFT_KIND_MODULES } from "./kinds/index.ts";
import type { LiftInput } from "./lift-input.ts";
import { judgeTopRail } from "./rail/judge-top-rail.ts";
import { topRail } from "./rail/top-rail.ts";

/** Lift and rig of one shade, with the parts that were chosen before the folds were laid. */
export function planLift(input: LiftInput): StageResult<Lift> {
  const planned: StageResult<Lift> = LIFT_KIND_MODULES[input.liftParts.kind].plan(input);
  const { values: lift } = planned;
  const rail = topRail(input, lift);
  // The cords of a top rail hang at the front whatever works the shade.
  const whole = rail.values === undefined ? lift : { ...lift, topRail: rail.values.rail, cordsAtFront: true };
  return staged(whole, {
    findings: () => [
      ...planned.findings,
      ...judgeTopRail(input.shade, rail.values),
      ...judgeExamples(input.shade, lift),
    ],
    workings: () => [...planned.workings, ...rail.workings],
  });
}
