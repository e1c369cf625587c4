import type { Json, PathStep } from "../protocol/index.ts";

/** One field that two people changed, each without the other's change: both values are kept until someone chooses. */
export interface FieldConflict {
  path: PathStep[];
  /** What both began with; what is absent was not there. */
  base?: Json;
  /** Of the one whose changes are done now. */
  mine?: Json;
  /** Of those who were before. */
  theirs?: Json;
  /** The last version that changed it before. */
  theirVersion?: number;
}
