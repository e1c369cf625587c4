import { staged } from "../../../figures/index.ts";
import { LIFT_TRAITS } from "../../../job/index.ts";
import type { CleatLift } from "../../../shade-plan/index.ts";
import { cleatInput } from "../../lift-input.ts";
import { searchCleats } from "../../search/search-cleats.ts";
import type { LiftKindModule } from "../lift-kind.ts";
import { planCleat } from "./plan-cleat.ts";

/** Cords through eyes along the board, over the last one and straight down to a cleat that holds them: no lock. */
export const cleat: LiftKindModule<CleatLift> = {
  chooseParts({ shade: { eye, turnEye } }) {
    const heightMm = Math.max(eye.outsideDiameterMm, turnEye.outsideDiameterMm);
    return {
      values: { takeUp: "cleat", kind: "cleat", heightMm, label: "height of the eyes" },
      workings: [],
    };
  },
  plan(input) {
    const rig = planCleat(cleatInput(input));
    return staged(
      { kind: "cleat", ...LIFT_TRAITS.cleat, ...rig.values },
      { findings: () => rig.findings, workings: () => rig.workings },
    );
  },
  search: searchCleats,
};
