import type { CordLockLift } from "../../shade-plan/index.ts";

/** The hanging cord at one height of the shade. */
export interface TailState {
  /** Below the lock, mm. */
  tailMm: number;
  /** Its lower end above the floor, where the height of the shade is known; 0 where it lies on the floor, mm. */
  endAboveFloorMm?: number;
}

/** The tail when the shade is raised by this share of its travel: 0 lowered, 1 raised. It grows by the travel. */
export function tailAt(
  lift: Pick<CordLockLift, "tailLoweredMm" | "tailRaisedMm" | "tailEndAboveFloorLoweredMm">,
  raised: number,
): TailState {
  const grownMm = (lift.tailRaisedMm - lift.tailLoweredMm) * Math.min(1, Math.max(0, raised));
  const tailMm = lift.tailLoweredMm + grownMm;
  const lowered = lift.tailEndAboveFloorLoweredMm;
  if (lowered === undefined) return { tailMm };
  return { tailMm, endAboveFloorMm: Math.max(0, lowered - grownMm) };
}
