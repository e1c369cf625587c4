import { figureRule, figureRuleOf, type Worked } from "../../figures/index.ts";
import type { CordLock } from "../../job/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import type { LockRoom } from "./lock-fit.ts";

export interface SlotLayout {
  /** Number of the first slot in use, counted from the wall. */
  first: number;
  /** Middles of the slots in use, mm from the wall. */
  slotsMm: number[];
  pitchMm: number;
  perSlot: number;
}

/** Wall of a housing at a roller's end, and the gap beside it where none was measured. */
const WALL = sourced(1.5, "mm", cite("our-choice", "sheet of the housing and the roller’s pin"));
const END_GAP = sourced(0.5, "mm", cite("our-choice", "a small gap; measure your own"));
/** However thick its walls are said to be, so much of a housing is roller. */
const LEAST_ROLLER = 0.6;

/** Length of a lock's rollers, across the board, mm: a cord lies on them and not in the gap beside. */
export function rollerLengthMm({ housingWidthMm, endGapMm = END_GAP.value }: CordLock): number {
  return Math.max(LEAST_ROLLER * housingWidthMm, housingWidthMm - 2 * (WALL.value + endGapMm));
}

/** Middle of one slot, mm from the wall: slots share the rollers, whose middle lies under the line of eyes. */
export function slotMiddleMm(lock: CordLock, slot: number, eyeLineMm: number): number {
  const slots = lock.dividerWires + 1;
  return eyeLineMm + (slot - (slots + 1) / 2) * (rollerLengthMm(lock) / slots);
}

const SLOTS = figureRule({
  id: "lift.slots",
  label: "Slots of the lock",
  symbol: "S",
  unit: "count",
  formula: "w + 1",
  inputs: { w: ["count", "divider wires", "lift/lock", "lift/cord", "figure:shape.columns"] },
  cite: cite("lock-instructions", "wires divide the lock into slots"),
  compute: ({ w }) => w + 1,
});

const PER_SLOT = figureRuleOf<{ innerOnly: boolean }>()({
  id: "lift.cords-per-slot",
  label: "Cords in one slot at most",
  symbol: "k",
  unit: "count",
  formula: "ceil(M / S)",
  inputs: {
    M: ["count", "cords that the lock takes at most", "lift/lock", "lift/cord"],
    S: [
      "count",
      ({ innerOnly }) => (innerOnly ? "inner slots, for thin cord" : "slots"),
      "figure:lift.slots",
    ],
  },
  cite: cite("lock-instructions", "two in a slot of six cords and three slots"),
  compute: ({ M, S }) => Math.ceil(M / S),
});

/** The slots that these cords use. More cords than the lock takes are drawn crowded, beside the finding that says so. */
export function slotLayout(
  lock: CordLock,
  room: LockRoom,
  cords: number,
  eyeLineMm: number,
): Worked<SlotLayout> {
  const slots = SLOTS.figure({ w: lock.dividerWires });
  const noneInside = room.lastSlot < room.firstSlot;
  const first = noneInside ? 1 : room.firstSlot;
  const last = noneInside ? room.slots : room.lastSlot;
  const inUse = last - first + 1;
  const stated = PER_SLOT.figure({ M: room.cordsMax, S: inUse }, { innerOnly: room.innerOnly });
  const values: SlotLayout = {
    first,
    slotsMm: Array.from({ length: inUse }, (_, i) => slotMiddleMm(lock, first + i, eyeLineMm)),
    pitchMm: rollerLengthMm(lock) / room.slots,
    perSlot: Math.max(stated.value, Math.ceil(cords / inUse)),
  };
  return { values, workings: [slots, stated] };
}

/** Number of the first slot that these cords use, counted from the wall. */
export function firstSlotInUse(room: LockRoom): number {
  return room.lastSlot < room.firstSlot ? 1 : room.firstSlot;
}
