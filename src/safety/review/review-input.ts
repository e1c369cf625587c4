import type { LiftCords } from "./lift-cords.ts";
import type { ShadeFacts } from "./lift-geometry.ts";

/** What the review of one shade reads: what the stages before have worked out, and the lift. */
export interface ReviewInput extends ShadeFacts {
  lift: LiftCords;
}
