import type { Finding, Remedy } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { downToMark, lengthText } from "../../units/index.ts";
import type { TubeInput } from "../lift-input.ts";
import { REACH } from "../reach.ts";
import { driveAboveFloorMm, type HangingControl } from "./control-drop.ts";

/** Does what hangs from the drive fit above the floor, and within reach? */
export function judgeReach(
  input: TubeInput,
  of: HangingControl,
  { dropMm, driveX }: { dropMm: number; driveX: number },
): Finding[] {
  const driveMm = driveAboveFloorMm(input, driveX);
  if (driveMm === undefined) return [];
  const { shade } = input;
  const endMm = driveMm - dropMm;
  const text = (mm: number) => lengthText(mm, shade.units);
  const base: Pick<Finding, "stage" | "shadeId" | "path" | "figures" | "remedies"> = {
    stage: "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/${of.key}`,
    figures: [`rig.${of.what}-end`],
    remedies: shorter(input, of, driveMm - shade.making.lift.cleatAboveFloorMm),
  };
  if (endMm <= 0) {
    return [
      {
        ...base,
        id: `rig.${of.what}-on-floor`,
        severity: "stop",
        text: `The ${of.what} is ${text(dropMm)} long and its drive ${text(Math.max(0, driveMm))} above the floor: it does not fit.`,
        cite: cite("geometry"),
      },
    ];
  }
  if (endMm <= REACH.value) return [];
  return [
    {
      ...base,
      id: `rig.${of.what}-out-of-reach`,
      severity: "fix",
      text: `The ${of.what} ends ${text(endMm)} above the floor, above the reach of many hands.`,
      cite: REACH.cite,
    },
  ];
}

function shorter({ shade }: TubeInput, { key, what }: HangingControl, dropMm: number): Remedy[] {
  const marked = downToMark(dropMm, shade.units.ruler);
  if (marked <= 0) return [];
  return [
    {
      label: `Make the ${what} ${lengthText(marked, shade.units)} long`,
      patch: settingPatch(shade, "lift", key, marked),
    },
  ];
}
