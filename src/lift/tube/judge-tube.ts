import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { CordLoads } from "../cord-loads.ts";
import { judgeLevel } from "../course/judge-level.ts";
import { unsureShares } from "../judge-pull.ts";
import { judgeRear } from "../judge-rear.ts";
import { shortSpool } from "../judge-rig.ts";
import { judgeStrength } from "../judge-strength.ts";
import { judgeControl } from "./judge-control.ts";
import { judgeDrive } from "./judge-drive.ts";
import { judgePositions } from "./judge-positions.ts";
import { judgeSpools } from "./judge-spools.ts";
import type { TubeInput } from "./tube-input.ts";
import type { TubeRig } from "./tube-parts.ts";
import type { Wound } from "./winding.ts";

export interface TubeFound {
  rig: TubeRig;
  wound: Wound;
  loads: CordLoads;
  /** What its own check says against it. */
  faults: string[];
}

/** All that a maker should know of a lift with a tube before the board is drilled. */
export function judgeTube(input: TubeInput, lift: TubeLift, found: TubeFound, book: WorkingBook): Finding[] {
  const { resolved } = input;
  const places = judgePositions(input, lift, found.rig);
  // What has no place is said once, with what makes one.
  const isSaid = places.some(({ severity, id }) => severity === "stop" || id === "rig.supports");
  return [
    ...(found.faults.length === 0 || isSaid ? [] : [failedCheck(input, found.faults)]),
    ...places,
    ...judgeSpools(input, lift, found.wound, book),
    ...judgeDrive(input, lift),
    ...judgeControl(input, lift),
    ...unsureShares(resolved, found.loads, book),
    ...judgeStrength(resolved, lift, () => true, book),
    ...judgeLevel(resolved, lift.course, () => true),
    ...shortSpool(resolved, lift),
    ...judgeRear(input, lift),
  ];
}

function failedCheck({ resolved }: TubeInput, faults: string[]): Finding {
  return {
    stage: "rig",
    shadeId: resolved.shadeId,
    id: "rig.check-failed",
    severity: "stop",
    text: `The drawn lift does not pass its own check: ${faults.slice(0, 3).join("; ")}. Do not drill the board by it.`,
    cite: cite("geometry", "parts laid side by side on the drawn board"),
    remedies: [],
  };
}
