import { type Caution, hangingCords } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { SafetyShade } from "../safety-reads.ts";
import {
  CHILDREN_AND_CORDS,
  CORDS_BEHIND,
  cleatCaution,
  FURNITURE_AWAY,
  NEVER_KNOT,
} from "../usual-cautions.ts";
import type { LiftCords } from "./lift-cords.ts";

const ORDER_OF_ADVICE: Caution = {
  id: "order-of-advice",
  title: "What agencies advise, in this order",
  text: "First a shade without cords, or with every cord out of reach at the front, the sides and the back. Where that cannot be: cords as short as possible and out of reach, wound on a high cleat. No cot, bed or furniture near the window. Cords never knotted together.",
  cite: cite("cordless-advice"),
};

const WHY_THESE_LENGTHS: Caution = {
  id: "why-these-lengths",
  title: "Why so short",
  text: "A cord of 22 cm is too short to go around the neck of a one-year-old, a loop of 44 cm around too small to pass over the head, and 35 N is the force that a child can exert.",
  cite: cite("child-pull"),
};

const HOW_FAST: Caution = {
  id: "how-fast",
  title: "How fast",
  text: "A child caught by the neck loses consciousness in about 15 seconds.",
  cite: cite("cord-hazard-nz"),
};

const ASK_AND_DEFER: Caution = {
  id: "ask-and-defer",
  title: "What comes before this review",
  text: "Local codes, the current text of each rule, the instructions of whoever made the parts, and licensed practice come before anything printed here. The dates say when each text was read. A plan can show that a rule fails; that none fails it cannot show.",
  cite: cite("our-choice"),
};

/** The cautions that stand beside the results, on the review sheet; that about a cleat only where cords hang to be wound on one. */
export function reviewCautions(shade: SafetyShade, lift: LiftCords): Caution[] {
  return [
    CHILDREN_AND_CORDS,
    ORDER_OF_ADVICE,
    WHY_THESE_LENGTHS,
    HOW_FAST,
    CORDS_BEHIND,
    NEVER_KNOT,
    FURNITURE_AWAY,
    ...(hangingCords(lift).length > 0 ? [cleatCaution(shade)] : []),
    ASK_AND_DEFER,
  ];
}
