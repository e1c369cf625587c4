import type { Finding } from "../../../figures/index.ts";
import type { LoopLift } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { lengthText } from "../../../units/index.ts";
import type { TubeInput } from "../../lift-input.ts";

/** A loop asks for a tensioner on the wall. */
export function tensioner({ shade }: TubeInput, lift: LoopLift): Finding {
  const { units } = shade;
  const end =
    lift.loopEndAboveFloorMm === undefined
      ? "How high that is above the floor is not known"
      : `That is ${lengthText(lift.loopEndAboveFloorMm, units)} above the floor`;
  return {
    shadeId: shade.shadeId,
    id: "lift.loop-tensioner",
    path: `${shade.path}/shade/making/lift/loopDropMm`,
    stage: "lift",
    severity: "note",
    text: `The loop is to be worked only with its lower end held by a tensioner that is screwed to the wall, ${lengthText(lift.loopDropMm, units)} below the drive. ${end}. A loop that hangs free can strangle a child: no tensioner, no loop.`,
    cite: cite("us-a100-1-2022", "a continuous loop asks for a tension device"),
    figures: ["rig.loop-perimeter"],
    remedies: [],
  };
}
