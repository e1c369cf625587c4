import type { Finding } from "../../../figures/index.ts";
import type { SpringLift } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { forceText, massText } from "../../../units/index.ts";
import type { TubeInput } from "../../lift-input.ts";

/** Weight grows on the way up, and no even spring follows it: only friction, and the maker's table, can settle it. */
export function springUnproven({ shade, mass, liftParts }: TubeInput, lift: SpringLift): Finding {
  const text = (forceN: number) => forceText(forceN, shade.units);
  return {
    shadeId: shade.shadeId,
    id: "lift.spring-unproven",
    path: `${shade.path}/shade/making/lift/drive`,
    stage: "lift",
    severity: "unproven",
    text: `Not proven: whether “${liftParts.drive.name}” holds this shade at every height. The cords carry ${text(lift.heldLoweredN)} lowered and ${text(lift.heldN)} raised, so an even spring set half way is up to ${text(lift.bandN)} off at either end, and friction must hold that. Choose the spring by its maker’s table for ${massText(mass.totalKg, shade.units)}, and try it with a weight on the bar before the cords are cut short.`,
    cite: cite("geometry", "an even spring set half way between the two torques"),
    figures: ["lift.held-lowered", "lift.held", "lift.spring-band"],
    remedies: [],
  };
}
