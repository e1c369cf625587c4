import type { Figure, Finding } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { CordLoads } from "../cord-loads.ts";
import { judgeLevel } from "../course/judge-level.ts";
import { unsureShares } from "../judge-pull.ts";
import { judgeRear } from "../judge-rear.ts";
import { judgeStrength } from "../judge-strength.ts";
import { shortSpool } from "../lock/judge-rig.ts";
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
export function judgeTube(
  input: TubeInput,
  lift: TubeLift,
  { rig, wound, loads, faults }: TubeFound,
): { findings: Finding[]; workings: Figure[] } {
  const { shade } = input;
  const places = judgePositions(input, lift, rig);
  // What has no place is said once, with what makes one.
  const isSaid = places.some(({ severity, id }) => severity === "stop" || id === "rig.supports");
  const shares = unsureShares(shade, loads);
  const strength = judgeStrength(shade, lift, () => true);
  return {
    findings: [
      ...(faults.length === 0 || isSaid ? [] : [failedCheck(input, faults)]),
      ...places,
      ...judgeSpools(input, lift, wound),
      ...judgeDrive(input, lift),
      ...judgeControl(input, lift),
      ...shares.findings,
      ...strength.findings,
      ...judgeLevel(shade, lift.course, () => true),
      ...shortSpool(shade, lift),
      ...judgeRear(input, lift),
    ],
    workings: [...shares.workings, ...strength.workings],
  };
}

function failedCheck({ shade }: TubeInput, faults: string[]): Finding {
  return {
    stage: "rig",
    shadeId: shade.shadeId,
    id: "rig.check-failed",
    severity: "stop",
    text: `The drawn lift does not pass its own check: ${faults.slice(0, 3).join("; ")}. Do not drill the board by it.`,
    cite: cite("geometry", "parts laid side by side on the drawn board"),
    remedies: [],
  };
}
