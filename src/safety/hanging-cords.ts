import {
  exitBelowTopMm,
  type HangingCords,
  hangingCords,
  type LoopLift,
  type Size,
  type WandLift,
} from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import type { CautionInput } from "./caution-input.ts";
import type { LiftCords } from "./review/lift-cords.ts";
import type { SafetyShade } from "./safety-reads.ts";

/** What hangs at the front and where it ends, in whole sentences. */
export function frontText(input: CautionInput): string {
  const { shade, lift } = input;
  const hanging = hangingTexts(input);
  const control = controlText(shade, lift, hanging.length > 0);
  return [...hanging, ...(control === undefined ? [] : [control])].join(" ");
}

/** What works the shade at the front besides cords with a free end. */
function controlText(shade: SafetyShade, lift: CautionInput["lift"], cordsHang: boolean): string | undefined {
  const none = cordsHang ? "No other cord hangs at the front" : "No cord hangs at the front";
  switch (lift.kind) {
    case "cord-lock":
    case "cleat":
      return undefined;
    case "spring":
      return `${none}: the shade is raised and lowered by hand at its hem.`;
    case "tube-wand":
      return `${none}, but ${wandText(shade, lift)}.`;
    case "tube-loop":
      return loopText(shade, lift);
    case "motor":
      return `${none}: a motor raises and lowers the shade. Its lead, and that of its charger, is a cord as well: clip all of it out of reach.`;
  }
}

type Hung = Pick<CautionInput, "shade" | "size"> & { lift: LiftCords };

/** How far the cords hang out of each lock, and where they end, at both ends of their travel: nothing where none do. */
export function hangingTexts({ shade, size, lift }: Hung): string[] {
  return hangingCords(lift).map(
    (cords) => `${hangingText(shade, cords)}. ${lowEndText(shade, size, cords)}.`,
  );
}

function hangingText({ units }: Pick<SafetyShade, "units">, cords: HangingCords): string {
  const text = (mm: number) => lengthText(mm, units);
  const { count, downMm, upMm, side, from } = cords;
  const [one, many] = cords.raises === "shade" ? ["lift cord", "lift cords"] : ["cord", "cords"];
  const hang = count === 1 ? `One ${one} hangs` : `${count} ${many} hang`;
  return cords.raises === "shade"
    ? `${hang} ${text(downMm)} below the ${from} with the shade lowered and ${text(upMm)} with it raised`
    : `${hang} from the top rail’s own lock at the ${side} end, ${text(downMm)} below it with the top let down and ${text(upMm)} with it up`;
}

/** Where the lower ends are, as far as it is known. */
function lowEndText(
  { units, board }: Pick<SafetyShade, "units" | "board">,
  size: Size,
  cords: HangingCords,
): string {
  const { topAboveFloorMm } = size;
  const { raises, downMm, upMm } = cords;
  if (topAboveFloorMm === undefined) {
    return "How far above the floor they end is not known, since the sill’s height was not measured";
  }
  const lockMm = topAboveFloorMm - exitBelowTopMm(cords, size, board.thicknessMm);
  const at = (tailMm: number) =>
    tailMm >= lockMm ? "lying on the floor" : `${lengthText(lockMm - tailMm, units)} above the floor`;
  const [down, up] = raises === "shade" ? ["it is lowered", "it is raised"] : ["the top is down", "it is up"];
  return `They end ${at(downMm)} when ${down} and ${at(upMm)} when ${up}`;
}

function wandText({ units }: SafetyShade, lift: WandLift): string {
  const wand = `a wand of ${lengthText(lift.wandMm, units)}`;
  return lift.detachable ? `${wand}, which comes off and is kept elsewhere` : wand;
}

function loopText({ units }: SafetyShade, lift: LoopLift): string {
  const end =
    lift.loopEndAboveFloorMm === undefined
      ? "How far above the floor it ends is not known, since the sill’s height was not measured."
      : `It ends ${lengthText(lift.loopEndAboveFloorMm, units)} above the floor, at every height of the shade.`;
  return `One loop hangs at the front, ${lengthText(lift.loopDropMm, units)} down to a tensioner that is fixed to the wall. ${end}${lift.breakaway ? " A connector in it comes apart under a pull." : ""} Without its tensioner a loop can strangle a child.`;
}

/** How the cords run up the back, as a whole sentence. */
export function backText({ shade, grid, lift }: CautionInput): string {
  const widestMm = Math.max(0, ...grid.spacingsMm);
  const apart =
    widestMm === 0
      ? "Up the back each cord runs through one ring"
      : `Up the back ${lift.takeUp === "tube" ? "the cords" : "they"} run through rings ${lengthText(widestMm, shade.units)} apart`;
  switch (lift.rearCords) {
    case "open":
      return `${apart}.`;
    case "ring-locked":
      return `${apart}, each cord in a woven sleeve that the rings grip.`;
    case "enclosed":
      return `${apart}, under sleeves that are sewn down along both edges.`;
  }
}
