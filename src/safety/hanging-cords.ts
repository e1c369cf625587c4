import { lengthText } from "../units/index.ts";
import type { CautionInput } from "./caution-input.ts";

/** “5 lift cords hang …”: how far the cords hang, and where they end, at both ends of the travel. */
export function hangingText({ brief, lift }: CautionInput): string {
  const text = (mm: number) => lengthText(mm, brief.units);
  const many = lift.cords.length !== 1;
  const cords = many ? `${lift.cords.length} lift cords hang` : "One lift cord hangs";
  return `${cords} ${text(lift.tailLoweredMm)} below the lock with the shade lowered and ${text(lift.tailRaisedMm)} with it raised`;
}

/** Where the lower ends are, as far as it is known. */
export function lowEndText({ brief, lift }: CautionInput): string {
  const lowered = lift.tailEndAboveFloorLoweredMm;
  const raised = lift.tailEndAboveFloorRaisedMm;
  if (lowered === undefined || raised === undefined) {
    return "How far above the floor they end is not known, since the sill’s height was not measured";
  }
  const at = (mm: number) =>
    mm <= 0 ? "lying on the floor" : `${lengthText(mm, brief.units)} above the floor`;
  return `They end ${at(lowered)} when it is lowered and ${at(raised)} when it is raised`;
}

/** Spacing of the rings that guide the cords up the back. */
export function ringText({ brief, grid }: CautionInput): string {
  const widestMm = Math.max(0, ...grid.spacingsMm);
  return widestMm === 0
    ? "Up the back each cord runs through one ring"
    : `Up the back they run through rings ${lengthText(widestMm, brief.units)} apart`;
}
