import type { ResolvedShade } from "../job/index.ts";
import type { CordLockLift, LoopLift, WandLift } from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import type { CautionInput } from "./caution-input.ts";

/** What hangs at the front and where it ends, in whole sentences. */
export function frontText({ resolved, lift }: CautionInput): string {
  switch (lift.kind) {
    case "cord-lock":
      return `${hangingText(resolved, lift)}. ${lowEndText(resolved, lift)}.`;
    case "spring":
      return "No cord hangs at the front: the shade is raised and lowered by hand at its hem.";
    case "tube-wand":
      return `No cord hangs at the front, but ${wandText(resolved, lift)}.`;
    case "tube-loop":
      return loopText(resolved, lift);
    case "motor":
      return "No cord hangs at the front: a motor raises and lowers the shade.";
  }
}

/** “5 lift cords hang …”: how far the cords hang, and where they end, at both ends of the travel. */
export function hangingText({ units }: ResolvedShade, lift: CordLockLift): string {
  const text = (mm: number) => lengthText(mm, units);
  const many = lift.cords.length !== 1;
  const cords = many ? `${lift.cords.length} lift cords hang` : "One lift cord hangs";
  return `${cords} ${text(lift.tailLoweredMm)} below the lock with the shade lowered and ${text(lift.tailRaisedMm)} with it raised`;
}

/** Where the lower ends are, as far as it is known. */
export function lowEndText({ units }: ResolvedShade, lift: CordLockLift): string {
  const lowered = lift.tailEndAboveFloorLoweredMm;
  const raised = lift.tailEndAboveFloorRaisedMm;
  if (lowered === undefined || raised === undefined) {
    return "How far above the floor they end is not known, since the sill’s height was not measured";
  }
  const at = (mm: number) => (mm <= 0 ? "lying on the floor" : `${lengthText(mm, units)} above the floor`);
  return `They end ${at(lowered)} when it is lowered and ${at(raised)} when it is raised`;
}

function wandText({ units }: ResolvedShade, lift: WandLift): string {
  const wand = `a wand of ${lengthText(lift.wandMm, units)}`;
  return lift.detachable ? `${wand}, which comes off and is kept elsewhere` : wand;
}

function loopText({ units }: ResolvedShade, lift: LoopLift): string {
  const end =
    lift.loopEndAboveFloorMm === undefined
      ? "How far above the floor it ends is not known, since the sill’s height was not measured."
      : `It ends ${lengthText(lift.loopEndAboveFloorMm, units)} above the floor, at every height of the shade.`;
  return `One loop hangs at the front, ${lengthText(lift.loopDropMm, units)} down to a tensioner that is fixed to the wall. ${end} Without its tensioner a loop can strangle a child.`;
}

/** How the cords run up the back, as a whole sentence. */
export function backText({ resolved, grid, lift }: CautionInput): string {
  const widestMm = Math.max(0, ...grid.spacingsMm);
  const apart =
    widestMm === 0
      ? "Up the back each cord runs through one ring"
      : `Up the back ${lift.kind === "cord-lock" ? "they" : "the cords"} run through rings ${lengthText(widestMm, resolved.units)} apart`;
  switch (lift.rearCords) {
    case "open":
      return `${apart}.`;
    case "ring-locked":
      return `${apart}, each cord in a woven sleeve that the rings grip.`;
    case "enclosed":
      return `${apart}, under sleeves that are sewn down along both edges.`;
  }
}
