import { cite } from "../../../sources/index.ts";
import { SAME_LENGTH_MM } from "../../../units/index.ts";
import type { CordGeometry, PullCords } from "../cord-geometry.ts";
import { courseAt } from "../course.ts";
import type { Ask, Sweep } from "./quantity.ts";
import { courseStates } from "./states.ts";

const NO_PULL = "No cord with a free end hangs on this lift.";
const ONE_PULL = "Only one cord hangs, so that no two can be joined.";

/** The longest cord with a free end. A pull on it raises the shade and lengthens it up to its raised length. */
export const freeCordLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: ({ pull }) => (pull === undefined ? NO_PULL : undefined),
  states: pullStates,
  at: hangingAt,
  what: ({ pull }) => (pull?.count === 1 ? "the cord below its lock" : "the cords below their lock"),
};

/** Two cords tied end to end: the connector may come apart, so that each counts from the lock down. */
export const joinedCordLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: twoPulls,
  states: pullStates,
  at: (geometry, raise) => 2 * hangingAt(geometry, raise),
  what: () => "two of the hanging cords, tied end to end",
  working: (geometry, raise) => doubled("Two hanging cords end to end", hangingAt(geometry, raise)),
};

/** The loop that two cords make when they are tied end to end, both coming out of one lock. */
export const joinedCordLoop: Sweep = {
  ...joinedCordLength,
  what: () => "the loop of two hanging cords tied together",
  working: (geometry, raise) =>
    doubled("Around the loop of two hanging cords tied together", hangingAt(geometry, raise)),
};

/** How far the lowest point of a pull cord, or of a loop that stays closed, is above the floor. */
export const pullCordLowPoint: Sweep = {
  kind: "sweep",
  worse: "low",
  absent: pullOrLoop,
  needsFloor: true,
  states: ({ pull }) => (pull === undefined ? [0] : courseStates(pull.lengthMm)),
  at: (geometry, raise) => Math.max(0, lowPointMm(geometry, raise)),
  what: ({ pull }) => (pull === undefined ? "the lower end of the loop" : "the lower end of the cords"),
  working: (geometry, raise) => {
    const { pull, loop } = geometry;
    return {
      label: "Lowest point of the pull cords above the floor",
      symbol: "h",
      unit: "mm",
      formula: "max(0, H − e − t)",
      given: {
        H: [geometry.topAboveFloorMm ?? 0, "mm", "top line above the floor"],
        e: [(pull ?? loop)?.exitBelowTopMm ?? 0, "mm", "where the cords leave, below the top line"],
        t: [hangingLengthAt(geometry, raise), "mm", "what hangs below that"],
      },
      cite: cite("geometry", "0: it lies on the floor"),
      compute: ({ H, e, t }) => Math.max(0, (H ?? 0) - (e ?? 0) - (t ?? 0)),
    };
  },
};

/** What hangs of a pull cord, or of a loop that stays closed: L of EN 13120. */
export const hangingLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: pullOrLoop,
  states: ({ pull }) => (pull === undefined ? [0] : courseStates(pull.lengthMm)),
  at: hangingLengthAt,
  what: ({ pull }) => (pull === undefined ? "the loop" : "the hanging cords"),
};

export const operatingCordLength: Sweep = { ...freeCordLength, what: () => "the operating cord" };

/**
 * The longest loop that loose cords can form at a height or lower, taken as half of the way around it: two
 * cords side by side make a loop as long as they hang, one alone half of that.
 */
export const looseLoopLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: ({ pull, loop }) =>
    pull === undefined && loop?.device !== "none" ? "No loose cord hangs on this lift." : undefined,
  needsFloor: true,
  // Longer cords hang lower, so that the longest is among those that count if any does.
  states: pullStates,
  at: looseLoopAt,
  what: ({ pull }) => (pull === undefined ? "the loose loop" : "the loop that the hanging cords can form"),
};

export function looseLoopAt(geometry: CordGeometry, raise: number, { belowFloorMm }: Ask): number {
  const { pull, loop } = geometry;
  if (belowFloorMm !== undefined && lowPointMm(geometry, raise) > belowFloorMm + SAME_LENGTH_MM) return 0;
  if (pull === undefined) return loop?.device === "none" ? loop.dropMm : 0;
  return hangingAt(geometry, raise) / (pull.count > 1 ? 1 : 2);
}

export function pullStates({ pull }: CordGeometry): number[] {
  return pull === undefined ? [0] : courseStates(pull.lengthMm);
}

export function hangingAt({ pull }: CordGeometry, raise: number): number {
  return pull === undefined ? 0 : courseAt(pull.lengthMm, raise);
}

function hangingLengthAt(geometry: CordGeometry, raise: number): number {
  return geometry.pull === undefined ? (geometry.loop?.dropMm ?? 0) : hangingAt(geometry, raise);
}

/** Lowest point of what hangs at the front, above the floor, below 0 where it lies on it; asked only where the height is known. */
function lowPointMm(geometry: CordGeometry, raise: number): number {
  const exitMm = (geometry.pull ?? geometry.loop)?.exitBelowTopMm ?? 0;
  return (geometry.topAboveFloorMm ?? 0) - exitMm - hangingLengthAt(geometry, raise);
}

function pullOrLoop({ pull, loop }: CordGeometry): string | undefined {
  return pull === undefined && loop === undefined ? "No pull cord or loop hangs on this lift." : undefined;
}

function twoPulls({ pull }: CordGeometry): string | undefined {
  if (pull === undefined) return NO_PULL;
  return pull.count < 2 ? ONE_PULL : undefined;
}

/** Around the loop between the lock and the connector, mm. */
export function joinedLoopAt(pull: PullCords | undefined, raise: number): number {
  return pull?.joinedMm === undefined ? 0 : 2 * courseAt(pull.joinedMm, raise);
}

function doubled(label: string, lengthMm: number) {
  return {
    label,
    symbol: "P",
    unit: "mm" as const,
    formula: "2·t",
    given: { t: [lengthMm, "mm", "cord below the lock"] as const },
    cite: cite("geometry"),
    compute: ({ t }: Record<string, number>) => 2 * (t ?? 0),
  };
}
