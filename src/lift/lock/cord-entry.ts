import { figureRule, type Worked } from "../../figures/index.ts";
import { type CordLock, EYE_OPENING, type Eye } from "../../job/index.ts";
import type { CordEntry } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import type { FoundSeat } from "./find-seat.ts";
import { LOCK_CHOICE } from "./lock-parts.ts";
import type { RigLayout } from "./rig-threading.ts";
import { rollerLengthMm } from "./slot-layout.ts";

/** Roller of a lock of which none was measured, and where its axis lies in the housing. */
const ROLLER = sourced(9, "mm", cite("our-choice", "a small roller; measure your own"));
const OF_HOUSING = sourced(0.45, "ratio", cite("our-choice", "a roller leaves room above and below it"));
const AXIS = sourced(0.5, "ratio", cite("our-choice", "rollers lie half way down the housing"));

const EYE_LEVEL = figureRule({
  id: "rig.eye-level",
  label: "Cord in an eye, below the board",
  symbol: "e",
  unit: "mm",
  formula: "D·(1 + o) / 2 − d / 2",
  inputs: {
    D: ["mm", "outside of the eye, screwed in up to its ring", "lift/eye"],
    o: ["ratio", "opening over outside"],
    d: ["mm", "cord", "lift/cord"],
  },
  cite: cite("geometry", "a cord that carries lies on the lower edge of the opening"),
  compute: ({ D, o, d }) => (D * (1 + o)) / 2 - d / 2,
});

const LOCK_LEVEL = figureRule({
  id: "rig.lock-level",
  label: "Cord over the roller of the lock, below the board",
  symbol: "l",
  unit: "mm",
  formula: "h·H − R / 2 − d / 2",
  inputs: {
    h: ["ratio", "axis of the rollers, share of the housing’s height"],
    H: ["mm", "height of the housing", ...LOCK_CHOICE],
    R: ["mm", "roller", ...LOCK_CHOICE],
    d: ["mm", "cord", "lift/cord"],
  },
  cite: AXIS.cite,
  compute: ({ h, H, R, d }) => h * H - R / 2 - d / 2,
});

const CLIMB = figureRule({
  id: "rig.entry-climb",
  label: "Climb of the cord from the last eye to the lock",
  symbol: "α",
  unit: "deg",
  formula: "atan((e − l) / s)·180 / pi",
  inputs: {
    e: ["mm", "cord in the eye, below the board", "figure:rig.eye-level"],
    l: ["mm", "cord over the roller, below the board", "figure:rig.lock-level"],
    s: ["mm", "from that eye to the roller, along the board", "figure:rig.seat-*", "lift/straightRunMm"],
  },
  restsOn: ["lift/seat", "lift/seatMm", "columns/edgeInsetMm", "figure:shape.columns"],
  cite: cite("geometry", "below 0 it descends"),
  compute: ({ e, l, s }) => (Math.atan((e - l) / s) * 180) / Math.PI,
});

/** A cord in an eye of this diameter, below the board, mm. */
export function levelThroughEyeMm(eyeMm: number, cordMm: number): number {
  return EYE_LEVEL.figure({ D: eyeMm, o: EYE_OPENING.value, d: cordMm }).value;
}

/** A cord over the roller of a lock, below the board, mm. */
export function levelOverRollerMm(lock: CordLock, cordMm: number): number {
  return LOCK_LEVEL.figure({ h: AXIS.value, H: lock.housingHeightMm, R: rollerMm(lock), d: cordMm }).value;
}

/** Roller of a lock, mm: as measured, else a small one that fits the housing. */
function rollerMm({ rollerDiameterMm, housingLengthMm, housingHeightMm }: CordLock): number {
  const most = OF_HOUSING.value * Math.min(housingLengthMm, housingHeightMm);
  return Math.min(rollerDiameterMm ?? ROLLER.value, most);
}

/** How far from the nearest eye the middle of a lock must be, so that no cord climbs or descends to it by more than this, mm. */
export function levelRunMm(lock: CordLock, eyeMm: number, cordMm: number, mostDeg: number): number {
  const stepMm = Math.abs(levelThroughEyeMm(eyeMm, cordMm) - levelOverRollerMm(lock, cordMm));
  return stepMm / Math.tan((mostDeg * Math.PI) / 180);
}

/**
 * How the cords come into the lock: level where eyes and roller hold them at one height. Told of the eye nearest to the
 * lock, where a step in height makes the steepest cord.
 */
export function cordEntry(
  lock: CordLock,
  eye: Pick<Eye, "outsideDiameterMm">,
  layout: RigLayout,
  seat: FoundSeat,
): Worked<CordEntry> {
  const d = layout.cordDiameterMm;
  const roller = rollerMm(lock);
  const eyeLevel = EYE_LEVEL.figure({ D: eye.outsideDiameterMm, o: EYE_OPENING.value, d });
  const lockLevel = LOCK_LEVEL.figure({ h: AXIS.value, H: lock.housingHeightMm, R: roller, d });
  const runMm = Math.min(...layout.eyesMm.map((mm) => Math.abs(mm - seat.lockMm)));
  // A seat forced onto an eye leaves no run: the cord then climbs within the housing.
  const halfMm = lock.housingLengthMm / 2;
  const s = Math.max(runMm, halfMm);
  const climb = CLIMB.figure({ e: eyeLevel.value, l: lockLevel.value, s });
  return {
    values: {
      rollerMm: roller,
      rollerLengthMm: rollerLengthMm(lock),
      axisMm: AXIS.value * lock.housingHeightMm,
      eyeLevelMm: eyeLevel.value,
      lockLevelMm: lockLevel.value,
      climbDeg: climb.value,
      mouthLevelMm: lockLevel.value + ((eyeLevel.value - lockLevel.value) * halfMm) / s,
    },
    workings: [eyeLevel, lockLevel, climb],
  };
}
