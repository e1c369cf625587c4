import type { LiftKindOf } from "../job/index.ts";
import type { LockChoice } from "./lock/choose-lock.ts";
import type { TubeLiftParts } from "./tube/tube-lift-parts.ts";

export interface LockLiftParts extends LockChoice {
  takeUp: "lock";
  kind: LiftKindOf<"lock">;
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  label: string;
}

/** Nothing takes the cords up on the board: the eyes are the lowest part under it. */
export interface CleatLiftParts {
  takeUp: "cleat";
  kind: LiftKindOf<"cleat">;
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  label: string;
}

/** What takes up the cords. */
export type LiftParts = LockLiftParts | CleatLiftParts | TubeLiftParts;
