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
    const { values, findings, workings } = planCleat(cleatInput(input));
    return { values: { kind: "cleat", ...LIFT_TRAITS.cleat, ...values }, findings, workings };
  },
  search: searchCleats,
};
