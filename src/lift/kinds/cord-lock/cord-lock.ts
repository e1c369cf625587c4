import { staged } from "../../../figures/index.ts";
import { LIFT_TRAITS } from "../../../job/index.ts";
import type { CordLockLift } from "../../../shade-plan/index.ts";
import { lockInput } from "../../lift-input.ts";
import { chooseLock } from "../../lock/choose-lock.ts";
import { planLock } from "../../lock/plan-lock.ts";
import { searchLocks } from "../../search/search-locks.ts";
import type { LiftKindModule } from "../lift-kind.ts";

/** Cords through eyes along the board and over a lock that holds them; their tails hang in front. */
export const cordLock: LiftKindModule<CordLockLift> = {
  chooseParts({ shade, columns }) {
    const choice = chooseLock(shade, columns.length);
    const heightMm = choice.lock.housingHeightMm;
    return {
      values: { ...choice, takeUp: "lock", kind: "cord-lock", heightMm, label: "lock height" },
      workings: [],
    };
  },
  plan(input) {
    const rig = planLock(lockInput(input));
    return staged(
      { kind: "cord-lock", ...LIFT_TRAITS["cord-lock"], ...rig.values },
      { findings: () => rig.findings, workings: () => rig.workings },
    );
  },
  search: (need, shelf, most) => searchLocks(need, shelf, most, "cord-lock"),
};
