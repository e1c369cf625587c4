import { figureRule, staged } from "../../../figures/index.ts";
import { LIFT_TRAITS } from "../../../job/index.ts";
import type { SpringLift } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { MM_PER_M } from "../../../units/index.ts";
import { planTubeCourse } from "../../course/plan-course.ts";
import { tubeInput } from "../../lift-input.ts";
import { searchTubes } from "../../search/search-tubes.ts";
import { chooseTubeLiftParts } from "../../tube/choose-tube-lift-parts.ts";
import { hardHandPull } from "../../tube/hard-hand-pull.ts";
import { judgeTube } from "../../tube/judge-tube.ts";
import { planTube } from "../../tube/plan-tube.ts";
import type { LiftKindModule } from "../lift-kind.ts";
import { springUnproven } from "./spring-unproven.ts";

const EVEN_SPRING = {
  unit: "N",
  inputs: {
    m: ["Nm", "torque on the tube, lowered", "figure:lift.torque-lowered"],
    M: ["Nm", "torque on the tube, raised", "figure:lift.torque-raised"],
    r: ["mm", "axis to the cord, lowered", "figure:lift.wound-lowered"],
  },
  cite: cite("geometry", "an even spring set half way between the two torques"),
} as const;

const BAND = figureRule({
  ...EVEN_SPRING,
  id: "lift.spring-band",
  label: "Pull that friction must hold, each way",
  symbol: "b",
  formula: "1000·abs(M − m) / (2·r)",
  compute: ({ m, M, r }) => (1000 * Math.abs(M - m)) / (2 * r),
});

const HEM_PULL = figureRule({
  ...EVEN_SPRING,
  id: "lift.pull",
  label: "Pull at the hem, at the worse end, with just enough friction to hold",
  symbol: "F",
  formula: "1000·abs(M − m) / r",
  compute: ({ m, M, r }) => (1000 * Math.abs(M - m)) / r,
});

/**
 * A spring balances the weight; a hand moves the shade at its hem. One that pulls evenly is set half way between the
 * two torques; friction holds what is left either way, and a hand that moves the shade works against both.
 */
export const spring: LiftKindModule<SpringLift> = {
  chooseParts: (input) => chooseTubeLiftParts(input, "spring"),
  plan(given) {
    const input = tubeInput(given);
    const planned = planTube(input);
    const { parts, turning, wound } = planned.values;
    const torques = { m: turning.loweredNm, M: turning.raisedNm, r: wound.loweredMm };
    const band = BAND.figure(torques);
    const pull = HEM_PULL.figure(torques);
    const evenNm = (turning.loweredNm + turning.raisedNm) / 2;
    const course = planTubeCourse(input, parts, (torqueNm, radiusMm) => {
      const offN = (MM_PER_M * (torqueNm - evenNm)) / radiusMm;
      return { pullN: Math.max(0, offN + band.value), holdN: Math.abs(offN) };
    });
    const { massMinKg } = input.liftParts.drive;
    const lift: SpringLift = {
      ...parts,
      kind: "spring",
      ...LIFT_TRAITS.spring,
      bandN: band.value,
      pullN: pull.value,
      ...(massMinKg === undefined ? {} : { massMinKg }),
      course: course.values,
    };
    const judged = judgeTube(input, lift, planned.values);
    return staged(lift, {
      findings: () => [
        ...judged.findings,
        springUnproven(input, lift),
        ...hardHandPull(input, lift, "at the hem"),
      ],
      workings: () => [...planned.workings, band, pull, ...course.workings, ...judged.workings],
    });
  },
  search: (need, shelf, most) =>
    searchTubes(need, shelf, most, {
      kind: "spring",
      handPullN: (_, { loweredNm, raisedNm, loweredMm }) =>
        (MM_PER_M * Math.abs(raisedNm - loweredNm)) / loweredMm,
    }),
};
