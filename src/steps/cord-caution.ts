import { hangingCords } from "../shade-plan/index.ts";
import type { Bench } from "./bench.ts";
import { CORDS_AT_HANGING, CORDS_BEHIND_HANGING, CORDS_LEFT_HANGING, LOOP } from "./hazards.ts";

/** What is said of the cords beside a shade that hangs: which of them hang at the front is asked of the one list. */
export function cordCaution({ lift }: Pick<Bench, "lift">): string {
  if (hangingCords(lift).length > 0) return CORDS_AT_HANGING;
  return lift.kind === "tube-loop" ? LOOP : CORDS_BEHIND_HANGING;
}

/** The same beside one that is left to hang for days. */
export function cordCautionLeft(bench: Pick<Bench, "lift">): string {
  return hangingCords(bench.lift).length > 0 ? CORDS_LEFT_HANGING : cordCaution(bench);
}
