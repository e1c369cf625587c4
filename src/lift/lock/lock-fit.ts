import type { Cord, CordLock } from "../../job/index.ts";
import { type Cite, cite, sourced } from "../../sources/index.ts";
import { FIT_SLACK, fineText, trimmed } from "../../units/index.ts";
import { counted } from "../../words/index.ts";

/** What a lock offers to cords of one diameter. */
export interface LockRoom {
  /** Divider wires + 1. */
  slots: number;
  /** Slots that these cords may use, counted from the wall, first and last included. */
  firstSlot: number;
  lastSlot: number;
  /** Cords in one slot at most. */
  perSlot: number;
  /** Cords in all at most. */
  cordsMax: number;
  /** Nobody states how many it takes: two in a slot are counted on. */
  capacityUnknown: boolean;
  /** The cord is so thin that it goes in the inner slots only: by the lock’s data, or since it could slip into the end gap. */
  innerOnly: boolean;
}

/** What comes of it where cord and lock do not go together. */
export type FitHarm = "jams" | "too-thick" | "too-many" | "not-known";

/** One reason against a lock. `reason` completes “The lock …”. */
export interface Misfit {
  id: string;
  /** Absent for what is only worth knowing. */
  harm?: FitHarm;
  severity: "stop" | "fix" | "note" | "unproven";
  reason: string;
  cite: Cite;
}

/** Our own marks for a lock of which only one cord diameter is stated. */
const NOMINAL_FIX = 0.1;
const NOMINAL_STOP = 0.25;
const nominalCite = cite("our-choice", "10 % off the stated diameter is looked at, 25 % refused");
/** Cords in a slot of a lock whose capacity nobody states. */
const USUAL_IN_SLOT = sourced(
  2,
  "count",
  cite("lock-instructions", "two in a slot of six cords and three slots"),
);
/** Cord that is thicker than the end gap by less than this share of itself. */
const GAP_MARGIN = 0.15;

/**
 * Slots and capacity for one cord. Thin cord keeps to the inner slots, where the lock's data say so or where the gap at the
 * roller's end would take it in: from an inner slot it cannot come to that gap.
 */
export function lockRoom(lock: CordLock, cord: Cord): LockRoom {
  const slots = lock.dividerWires + 1;
  const thinMm = Math.max(lock.thinCordMm ?? 0, lock.endGapMm ?? 0);
  const innerOnly = cord.diameterMm <= thinMm + FIT_SLACK;
  const capacityUnknown = lock.cordsMax === undefined;
  const most = lock.cordsMax ?? USUAL_IN_SLOT.value * slots;
  const about = { slots, capacityUnknown, innerOnly };
  if (!innerOnly) {
    return { ...about, firstSlot: 1, lastSlot: slots, perSlot: Math.ceil(most / slots), cordsMax: most };
  }
  const inner = Math.max(0, slots - 2);
  const stated = lock.thinCordsMax ?? Math.ceil(most / slots) * inner;
  const cordsMax = inner === 0 ? 0 : Math.min(stated, most);
  const perSlot = inner === 0 ? 0 : Math.ceil(cordsMax / inner);
  return { ...about, firstSlot: 2, lastSlot: slots - 1, perSlot, cordsMax };
}

/** Who has the cords: a shade, or whoever asks with no shade at all. */
export type CordHolder = "this shade has" | "you have";

/** Everything that speaks against so many cords of this diameter in this lock, the heaviest not first. */
export function misfits(
  lock: CordLock,
  cord: Cord,
  cordCount: number,
  holder: CordHolder = "this shade has",
): Misfit[] {
  return [
    ...countMisfits(lock, cord, `${holder} ${cordCount}`, cordCount),
    ...diameterMisfits(lock, cord),
    ...gapMisfits(lock, cord),
  ];
}

function countMisfits(lock: CordLock, cord: Cord, has: string, cordCount: number): Misfit[] {
  const room = lockRoom(lock, cord);
  if (room.capacityUnknown && room.cordsMax > 0) return unknownCapacity(lock, room, cordCount);
  if (cordCount <= room.cordsMax) return [];
  const reason = room.innerOnly
    ? room.cordsMax === 0
      ? `has no inner slots, and cord of ${fineText(cord.diameterMm)} may not go in the outer ones: it can slip in beside the roller and jam`
      : `takes at most ${counted(room.cordsMax, "cord")} of ${fineText(cord.diameterMm)}, in its inner slots; ${has}`
    : `takes at most ${counted(room.cordsMax, "cord")}; ${has}`;
  return [
    {
      id: "lift.too-many-cords",
      harm: room.cordsMax === 0 ? "jams" : "too-many",
      severity: "stop",
      reason,
      cite: cite("lock-instructions", "capacity of a lock"),
    },
  ];
}

/** Of a lock without a stated capacity the wires tell how many cords lie in a slot, and a test whether it holds them. */
function unknownCapacity(lock: CordLock, { cordsMax, perSlot }: LockRoom, cordCount: number): Misfit[] {
  const shared = { harm: "not-known", cite: USUAL_IN_SLOT.cite } as const;
  if (cordCount > cordsMax) {
    return [
      {
        ...shared,
        id: "lift.capacity-unknown",
        severity: "fix",
        reason: `has no stated capacity, and ${counted(cordCount, "cord")} would lie more than ${perSlot} in a slot`,
      },
    ];
  }
  if (lock.tests?.hold !== undefined) return [];
  return [
    {
      ...shared,
      id: "lift.capacity-unknown",
      severity: "unproven",
      reason: `has no stated capacity. Test how much one cord holds in it before ${counted(cordCount, "cord")} ${cordCount === 1 ? "is" : "are"} trusted to it`,
    },
  ];
}

function diameterMisfits(lock: CordLock, cord: Cord): Misfit[] {
  const { cordMinMm: min, cordMaxMm: max, cordNominalMm: nominal } = lock;
  const d = cord.diameterMm;
  const tooThin = min !== undefined && d < min - FIT_SLACK;
  const tooThick = max !== undefined && d > max + FIT_SLACK;
  if (tooThin || tooThick) {
    const harm = tooThin
      ? "a thinner cord slips beside the roller and jams"
      : "a thicker cord does not run free";
    return [
      {
        id: "lift.cord-diameter",
        harm: tooThin ? "jams" : "too-thick",
        severity: "stop",
        reason: `is made for ${rangeText(lock)}; this cord is ${fineText(d)}, and ${harm}`,
        cite: cite("lock-instructions", "cord diameters of a lock"),
      },
    ];
  }
  if (nominal === undefined || (min !== undefined && max !== undefined)) return [];
  const off = Math.abs(d - nominal) / nominal;
  if (off <= NOMINAL_FIX + FIT_SLACK) return [];
  return [
    {
      id: "lift.cord-diameter",
      harm: off <= NOMINAL_STOP + FIT_SLACK ? "not-known" : d < nominal ? "jams" : "too-thick",
      severity: off > NOMINAL_STOP + FIT_SLACK ? "stop" : "fix",
      reason: `is stated for cord of ${fineText(nominal)}; this cord of ${fineText(d)} is ${trimmed(off * 100, 0)} % off`,
      cite: nominalCite,
    },
  ];
}

function rangeText({ cordMinMm: min, cordMaxMm: max }: CordLock): string {
  if (min === undefined) return `cord of at most ${fineText(max ?? 0)}`;
  return max === undefined
    ? `cord of at least ${fineText(min)}`
    : `cord of ${fineText(min)} to ${fineText(max)}`;
}

function gapMisfits(lock: CordLock, cord: Cord): Misfit[] {
  const { endGapMm: gap, cordMinMm, cordMaxMm, cordNominalMm } = lock;
  const d = cord.diameterMm;
  if (gap === undefined) {
    const stated = cordNominalMm !== undefined || (cordMinMm !== undefined && cordMaxMm !== undefined);
    return stated ? [] : [untested(cord)];
  }
  // A cord that could slip into it keeps to the inner slots.
  if (d <= gap + FIT_SLACK || (d - gap) / d >= GAP_MARGIN) return [];
  return [
    {
      id: "lift.end-gap",
      severity: "note",
      reason: `has a gap of ${fineText(gap)} at the roller’s end, hardly less than the cord’s ${fineText(d)}; a worn or flattened cord may slip into it`,
      cite: cite("our-choice", "15 % of the cord’s diameter kept in hand"),
    },
  ];
}

function untested(cord: Cord): Misfit {
  return {
    id: "lift.fit-untested",
    harm: "not-known",
    severity: "unproven",
    reason:
      `is not known to fit cord of ${fineText(cord.diameterMm)}. Test it for five minutes: screw it to a scrap board, ` +
      "thread one cord through a slot at the end, hang a kilogram on it, and raise, lock and let go twenty times " +
      "while you pull the cord towards the housing. It must hold each time and never slip beside the roller",
    cite: cite("our-choice", "a test in place of a range or an end gap"),
  };
}
