import type { PartKind } from "../../job/index.ts";
import type { FieldSpec } from "../inputs/spec.ts";
import {
  BAR_FIELDS,
  BOARD_FIELDS,
  CLOTH_FIELDS,
  CORD_FIELDS,
  DRIVE_FIELDS,
  EYE_FIELDS,
  LOCK_FIELDS,
  RING_FIELDS,
  TUBE_FIELDS,
} from "../settings/part-fields.ts";

interface KindOnBench {
  title: string;
  /** What one of them is called. */
  one: string;
  fields: Readonly<Record<string, FieldSpec>>;
}

/** Every kind of part on the bench, in the order in which a rig is thought through. */
export const BENCH_KINDS = {
  locks: { title: "Cord locks", one: "lock", fields: LOCK_FIELDS },
  cords: { title: "Cords", one: "cord", fields: CORD_FIELDS },
  eyes: { title: "Screw eyes and pulleys", one: "eye", fields: EYE_FIELDS },
  rings: { title: "Rings", one: "ring", fields: RING_FIELDS },
  tubes: { title: "Lift tubes", one: "tube", fields: TUBE_FIELDS },
  drives: { title: "Drives of lift tubes", one: "drive", fields: DRIVE_FIELDS },
  cloths: { title: "Cloths", one: "cloth", fields: CLOTH_FIELDS },
  bars: { title: "Weight bars", one: "bar", fields: BAR_FIELDS },
  ribs: { title: "Ribs", one: "rib", fields: BAR_FIELDS },
  boards: { title: "Boards", one: "board", fields: BOARD_FIELDS },
} as const satisfies Record<PartKind, KindOnBench>;

export const BENCH_ORDER = Object.keys(BENCH_KINDS) as PartKind[];
