import { type Finding, lazy, type StageResult, staged } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { judgeLevel } from "../course/judge-level.ts";
import { unsureShares } from "../judge-pull.ts";
import { judgeRear } from "../judge-rear.ts";
import { judgeCordStrength } from "../judge-strength.ts";
import type { TubeInput } from "../lift-input.ts";
import { shortSpool } from "../short-spool.ts";
import { judgeDrive } from "./judge-drive.ts";
import { judgePositions } from "./judge-positions.ts";
import { judgeSpools } from "./judge-spools.ts";
import type { TubePlan } from "./plan-tube.ts";
import { verifyTube } from "./verify-tube.ts";

/** All that a maker should know of a lift with a tube before the board is drilled, whatever turns it. */
export function judgeTube(
  input: TubeInput,
  lift: TubeLift,
  { rig, wound, loads }: TubePlan,
): Omit<StageResult<TubeLift>, "values"> {
  const { shade } = input;
  const shares = lazy(() => unsureShares(shade, loads));
  const strength = lazy(() => judgeCordStrength(shade, lift.cords, () => true));
  return staged(lift, {
    findings: () => [
      ...judgePlaces(input, lift, rig),
      ...judgeSpools(input, lift, wound),
      ...judgeDrive(input, lift),
      ...shares().findings,
      ...strength().findings,
      ...judgeLevel(shade, lift.course, () => true),
      ...shortSpool(shade, lift),
      ...judgeRear(input),
    ],
    workings: () => [...shares().workings, ...strength().workings],
  });
}

function judgePlaces(input: TubeInput, lift: TubeLift, rig: TubePlan["rig"]): Finding[] {
  const { size, grid } = input;
  const faults = verifyTube(lift, {
    columnsMm: grid.columns.map(({ xMm }) => xMm),
    boardFromMm: (size.finishedWidthMm - size.boardLengthMm) / 2,
    boardToMm: (size.finishedWidthMm + size.boardLengthMm) / 2,
  });
  const places = judgePositions(input, lift, rig);
  // What has no place is said once, with what makes one.
  const isSaid = places.some(({ severity, id }) => severity === "stop" || id === "rig.supports");
  return [...(faults.length === 0 || isSaid ? [] : [failedCheck(input, faults)]), ...places];
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
