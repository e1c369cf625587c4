import type { Finding } from "../figures/index.ts";
import type { Brief } from "../job/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { CautionInput } from "./caution-input.ts";
import { hangingText, lowEndText } from "./hanging-cords.ts";

/** What the cords of this shade come to, before any rule is read. */
export function judgeCords(input: CautionInput): Finding[] {
  const { brief, lift } = input;
  return lift.kind === "cord-lock" ? [freeHanging(brief, lift)] : [];
}

function freeHanging(brief: Brief, lift: CordLockLift): Finding {
  return {
    stage: "safety",
    shadeId: brief.shadeId,
    id: "safety.free-hanging-cord",
    weight: "mind",
    path: `${brief.path}/shade`,
    text: `${hangingText(brief, lift)}. ${lowEndText(brief, lift)}. Where children live or visit, choose a shade without cords that can be reached.`,
    cite: cite("cordless-advice"),
    remedies: [],
  };
}
