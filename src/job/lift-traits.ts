import type { LiftKind } from "./making.ts";

/** What other stages ask of a kind of lift, so that none needs to know its name. */
export interface LiftTraits {
  /** Where the cords end: over a lock on the board, on a cleat at the wall, or on spools of a tube under the board. */
  takeUp: "lock" | "cleat" | "tube";
  /** What hangs within reach for a hand to work it. */
  hangs: "tail" | "wand" | "loop" | "nothing";
  poweredBy: "hand" | "spring" | "motor";
  /** A cord or a loop of cord hangs in front, where a child can come to it. */
  cordsAtFront: boolean;
}

export const LIFT_TRAITS = {
  "cord-lock": { takeUp: "lock", hangs: "tail", poweredBy: "hand", cordsAtFront: true },
  cleat: { takeUp: "cleat", hangs: "tail", poweredBy: "hand", cordsAtFront: true },
  spring: { takeUp: "tube", hangs: "nothing", poweredBy: "spring", cordsAtFront: false },
  "tube-wand": { takeUp: "tube", hangs: "wand", poweredBy: "hand", cordsAtFront: false },
  "tube-loop": { takeUp: "tube", hangs: "loop", poweredBy: "hand", cordsAtFront: true },
  motor: { takeUp: "tube", hangs: "nothing", poweredBy: "motor", cordsAtFront: false },
} as const satisfies Record<LiftKind, LiftTraits>;

type Traits = typeof LIFT_TRAITS;

/** The kinds whose cords are taken up so. */
export type LiftKindOf<T extends LiftTraits["takeUp"]> = {
  [K in LiftKind]: Traits[K]["takeUp"] extends T ? K : never;
}[LiftKind];
