import type { Finding } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { CautionInput } from "./caution-input.ts";
import { hangingText, lowEndText } from "./hanging-cords.ts";

/** What the cords of this shade come to, before any rule is read. */
export function judgeCords(input: CautionInput): Finding[] {
  const { resolved, lift } = input;
  return lift.kind === "cord-lock" ? [freeHanging(resolved, lift)] : [];
}

function freeHanging(resolved: ResolvedShade, lift: CordLockLift): Finding {
  return {
    stage: "safety",
    shadeId: resolved.shadeId,
    id: "safety.free-hanging-cord",
    severity: "note",
    path: `${resolved.path}/shade`,
    text: `${hangingText(resolved, lift)}. ${lowEndText(resolved, lift)}. Where children live or visit, choose a shade without cords that can be reached.`,
    cite: cite("cordless-advice"),
    remedies: [],
  };
}
