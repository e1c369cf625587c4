import { figureRule, staged } from "../../../figures/index.ts";
import { LIFT_TRAITS } from "../../../job/index.ts";
import type { MotorLift } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { planTubeCourse } from "../../course/plan-course.ts";
import { tubeInput } from "../../lift-input.ts";
import { searchTubes } from "../../search/search-tubes.ts";
import { chooseTubeLiftParts } from "../../tube/choose-tube-lift-parts.ts";
import { judgeTube } from "../../tube/judge-tube.ts";
import { planTube } from "../../tube/plan-tube.ts";
import type { LiftKindModule } from "../lift-kind.ts";
import { motorPower } from "./motor-power.ts";

const RAISE_TIME = figureRule({
  id: "lift.raise-time",
  label: "Time to raise it",
  symbol: "t",
  unit: "s",
  formula: "60·N / n",
  inputs: {
    N: ["count", "turns of the tube", "figure:lift.turns"],
    n: ["count", "turns a minute, as the motor’s maker states", "lift/drive"],
  },
  cite: cite("maker", "speed of the motor"),
  compute: ({ N, n }) => (60 * N) / n,
});

/** A motor turns the tube. Nothing is said of the time where its speed is not known. */
export const motor: LiftKindModule<MotorLift> = {
  chooseParts: (input) => chooseTubeLiftParts(input, "motor"),
  plan(given) {
    const input = tubeInput(given);
    const planned = planTube(input);
    const { parts, wound } = planned.values;
    const { power, turnsPerMin } = input.liftParts.drive;
    const time =
      turnsPerMin === undefined ? undefined : RAISE_TIME.figure({ N: wound.turns, n: turnsPerMin });
    const course = planTubeCourse(input, parts, () => ({ pullN: 0, holdN: 0 }));
    const lift: MotorLift = {
      ...parts,
      kind: "motor",
      ...LIFT_TRAITS.motor,
      pullN: 0,
      ...(power === undefined ? {} : { power }),
      ...(time === undefined ? {} : { raiseSeconds: time.value }),
      course: course.values,
    };
    const judged = judgeTube(input, lift, planned.values);
    return staged<MotorLift>(lift, {
      findings: () => [...judged.findings, motorPower(input, lift)],
      workings: () => [
        ...planned.workings,
        ...(time === undefined ? [] : [time]),
        ...course.workings,
        ...judged.workings,
      ],
    });
  },
  search: (need, shelf, most) => searchTubes(need, shelf, most, { kind: "motor", handPullN: () => 0 }),
};
