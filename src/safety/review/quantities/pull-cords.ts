import { type Figure, figureRule, figureRuleOf } from "../../../figures/index.ts";
import { cite } from "../../../sources/index.ts";
import { SAME_LENGTH_MM } from "../../../units/index.ts";
import type { CordGeometry, OperatingLoop, PullCords } from "../cord-geometry.ts";
import { courseAt } from "../course.ts";
import { hasLead, LEAD_LOW, leadMm, leansOnClipsBelow } from "./lead.ts";
import type { CheckedAgainst, NamedCord, Sweep } from "./quantity.ts";
import { courseStates } from "./states.ts";

const NO_PULL = "No cord with a free end hangs on this lift.";
const ONE_PULL = "Only one cord hangs, so that no two can be joined.";

/** What the length of hanging cord rests on. */
const TAIL = [
  "lift/tailMm",
  "fold/topDropMm",
  "figure:rig.tail-raised",
  "figure:measure.finished-length",
] as const;

const JOINED = {
  "joined-cord-length": "Two hanging cords end to end",
  "joined-cord-loop": "Around the loop of two hanging cords tied together",
} as const;
const JOINED_CORDS = figureRuleOf<keyof typeof JOINED>()({
  id: (joined) => `safety.${joined}`,
  label: (joined) => JOINED[joined],
  symbol: "P",
  unit: "mm",
  formula: "a + b",
  inputs: {
    a: ["mm", "the longest hanging cord", ...TAIL],
    b: ["mm", "the next longest", ...TAIL],
  },
  cite: cite("geometry"),
  compute: ({ a, b }) => a + b,
});

const LOW_POINT = figureRule({
  id: "safety.pull-cord-low-point",
  label: "Lowest point of the pull cords above the floor",
  symbol: "h",
  unit: "mm",
  formula: "max(0, H − e − t)",
  inputs: {
    H: [
      "mm",
      "top line above the floor",
      "opening/sillAboveFloorMm",
      "opening/heightsMm",
      "figure:measure.*",
    ],
    e: [
      "mm",
      "where the cords leave, below the top line",
      "lift/kind",
      "lift/lock",
      "lift/eye",
      "lift/turnEye",
      "lift/drive",
      "board/section",
    ],
    t: ["mm", "what hangs below that", ...TAIL, "figure:rig.loop"],
  },
  cite: cite("geometry", "0: it lies on the floor"),
  compute: ({ H, e, t }) => Math.max(0, H - e - t),
});

/** The longest cord with a free end. A pull on it raises the shade and lengthens it up to its raised length. */
export const freeCordLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: ({ pulls }) => (pulls.length === 0 ? NO_PULL : undefined),
  states: pullStates,
  at: hangingAt,
  pulledAt: (geometry, raise, { pullN }) => stretchedMm(geometry, hangingAt(geometry, raise), pullN),
  what: longest,
};

/** Two cords tied end to end: the connector may come apart, so that each counts from the lock down. */
export const joinedCordLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: twoPulls,
  states: pullStates,
  at: joinedAt,
  pulledAt: (geometry, raise, { pullN }) => stretchedMm(geometry, joinedAt(geometry, raise), pullN),
  what: (geometry, raise) => ({
    text: "two of the hanging cords, tied end to end",
    cords: longest(geometry, raise).cords,
  }),
  working: (geometry, raise) => JOINED_CORDS.figure(twoLongestAt(geometry, raise), "joined-cord-length"),
};

/** The loop that two cords make when they are tied end to end, both coming out of one lock. */
export const joinedCordLoop: Sweep = {
  ...joinedCordLength,
  what: (geometry, raise) => ({
    text: "the loop of two hanging cords tied together",
    cords: longest(geometry, raise).cords,
  }),
  working: (geometry, raise) => JOINED_CORDS.figure(twoLongestAt(geometry, raise), "joined-cord-loop"),
};

/** How far the lowest point of a pull cord, or of a loop that stays closed, is above the floor. */
export const pullCordLowPoint: Sweep = {
  kind: "sweep",
  worse: "low",
  absent: (geometry) => pullOrLoop(closed(geometry), breaksAway(geometry)),
  needsFloor: () => true,
  states: pullStates,
  at: (geometry, raise) => frontLowPointMm(closed(geometry), raise),
  what: (geometry, raise) => lowestName(closed(geometry), raise),
  working: (geometry, raise) => lowPoint(closed(geometry), raise),
};

/** The same of any cord that hangs: a loop that comes apart, and a motor’s lead between two clips, among them. */
export const cordLowPoint: Sweep = {
  kind: "sweep",
  worse: "low",
  absent: (geometry) => (hasLead(geometry) ? undefined : pullOrLoop(geometry)),
  needsFloor: hangsAtFront,
  states: pullStates,
  leansOn: leansOnClipsBelow,
  at: (geometry, raise) => {
    const leadLowMm = leadLowPointMm(geometry);
    const frontMm = hangsAtFront(geometry) ? frontLowPointMm(geometry, raise) : NOTHING_HANGS;
    return Math.min(frontMm, leadLowMm ?? NOTHING_HANGS);
  },
  what: (geometry, raise) => (isLeadLowest(geometry, raise) ? LEAD_LOW : lowestName(geometry, raise)),
  working: (geometry, raise) => (isLeadLowest(geometry, raise) ? undefined : lowPoint(geometry, raise)),
};

/** However low a rule asks, what does not hang is higher. */
export const NOTHING_HANGS = Number.POSITIVE_INFINITY;

/** Of a lead that hangs free, where somebody said how low. */
function leadLowPointMm(geometry: CordGeometry): number | undefined {
  const { leadLowMm } = geometry;
  return leadMm(geometry) > 0 && leadLowMm !== undefined ? Math.max(0, leadLowMm) : undefined;
}

function isLeadLowest(geometry: CordGeometry, raise: number): boolean {
  if (!hangsAtFront(geometry)) return true;
  const leadLowMm = leadLowPointMm(geometry);
  return leadLowMm !== undefined && leadLowMm < frontLowPointMm(geometry, raise);
}

function lowPoint(geometry: CordGeometry, raise: number): Figure {
  const { exitBelowTopMm, hangsMm } = lowestOf(geometry, raise);
  return LOW_POINT.figure({ H: geometry.topAboveFloorMm ?? 0, e: exitBelowTopMm, t: hangsMm });
}

/** What hangs of a pull cord, or of a loop that stays closed: L of EN 13120. */
export const hangingLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: (geometry) => pullOrLoop(closed(geometry), breaksAway(geometry)),
  states: pullStates,
  at: (geometry, raise) => operatingCordLength.at(closed(geometry), raise, {}),
  what: (geometry, raise) => frontLongest(closed(geometry), raise),
};

/** What a hand works the shade by: a loop as much as a cord with a free end. */
export const operatingCordLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: pullOrLoop,
  states: pullStates,
  at: (geometry, raise) => Math.max(hangingAt(geometry, raise), geometry.loop?.dropMm ?? 0),
  what: (geometry, raise) => ({ text: "the operating cord", cords: frontLongest(geometry, raise).cords }),
};

function frontLongest(geometry: CordGeometry, raise: number): NamedCord {
  return (geometry.loop?.dropMm ?? 0) > hangingAt(geometry, raise)
    ? { text: "the loop", cords: "loop" }
    : longest(geometry, raise);
}

/**
 * The longest loop that loose cords can form at a height or lower, taken as half of the way around it: two
 * cords side by side make a loop as long as they hang, one alone half of that.
 */
export const looseLoopLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: ({ pulls, loop }) =>
    pulls.length === 0 && loop?.device !== "none" ? "No loose cord hangs on this lift." : undefined,
  needsFloor: () => true,
  // Longer cords hang lower, so that the longest is among those that count if any does.
  states: pullStates,
  at: looseLoopAt,
  what: looseLoop,
};

export function looseLoopAt(geometry: CordGeometry, raise: number, { belowFloorMm }: CheckedAgainst): number {
  const { pulls, loop } = geometry;
  const counts = ({ exitBelowTopMm, hangsMm }: Hanging) =>
    belowFloorMm === undefined ||
    (geometry.topAboveFloorMm ?? 0) - exitBelowTopMm - hangsMm <= belowFloorMm + SAME_LENGTH_MM;
  let longest = 0;
  for (const pull of pulls) {
    const hanging = hangingOf(pull, raise);
    if (counts(hanging)) longest = Math.max(longest, hanging.hangsMm / (pull.count > 1 ? 1 : 2));
  }
  if (loop?.device === "none" && counts(hangingLoop(loop))) longest = Math.max(longest, loop.dropMm);
  return longest;
}

export function pullStates({ pulls }: CordGeometry): number[] {
  return pulls.length === 0 ? [0] : pulls.flatMap(({ lengthMm }) => courseStates(lengthMm));
}

/** The longest cord with a free end. */
export function hangingAt({ pulls }: CordGeometry, raise: number): number {
  let longest = 0;
  for (const { lengthMm } of pulls) longest = Math.max(longest, courseAt(lengthMm, raise));
  return longest;
}

/** Around the longest loop between a lock and its connector, mm; 0 where no cords are joined. */
export function joinedLoopAt({ pulls }: CordGeometry, raise: number): number {
  let longest = 0;
  for (const { joinedMm } of pulls)
    if (joinedMm !== undefined) longest = Math.max(longest, 2 * courseAt(joinedMm, raise));
  return longest;
}

export function joinedStates({ pulls }: CordGeometry): number[] {
  return pulls.flatMap(({ joinedMm }) => (joinedMm === undefined ? [] : courseStates(joinedMm)));
}

interface Hanging {
  exitBelowTopMm: number;
  hangsMm: number;
  /** Absent of an operating loop. */
  cords?: PullCords;
}

function hangingOf(cords: PullCords, raise: number): Hanging {
  return { exitBelowTopMm: cords.exitBelowTopMm, hangsMm: courseAt(cords.lengthMm, raise), cords };
}

function hangingLoop({ exitBelowTopMm, dropMm }: OperatingLoop): Hanging {
  return { exitBelowTopMm, hangsMm: dropMm };
}

/** What reaches lowest of all that hangs at the front. */
export function lowestOf({ pulls, loop }: CordGeometry, raise: number): Hanging {
  const all = pulls.map((cords) => hangingOf(cords, raise));
  if (loop !== undefined) all.push(hangingLoop(loop));
  let lowest: Hanging = { exitBelowTopMm: 0, hangsMm: 0 };
  for (const one of all) {
    if (one.exitBelowTopMm + one.hangsMm > lowest.exitBelowTopMm + lowest.hangsMm) lowest = one;
  }
  return lowest;
}

/** Lowest point of what hangs at the front above the floor, 0 where it lies on it; asked only where the height is known. */
export function frontLowPointMm(geometry: CordGeometry, raise: number): number {
  const { exitBelowTopMm, hangsMm } = lowestOf(geometry, raise);
  return Math.max(0, (geometry.topAboveFloorMm ?? 0) - exitBelowTopMm - hangsMm);
}

export function lowestName(geometry: CordGeometry, raise: number): NamedCord {
  const { cords } = lowestOf(geometry, raise);
  return cords === undefined
    ? { text: "the lower end of the loop", cords: "loop" }
    : { text: "the lower end of the cords", cords: whereHung(cords) };
}

function hangsAtFront({ pulls, loop }: CordGeometry): boolean {
  return pulls.length > 0 || loop !== undefined;
}

const NOTHING_AT_FRONT = "No pull cord or loop hangs on this lift.";

function pullOrLoop(geometry: CordGeometry, why = NOTHING_AT_FRONT): string | undefined {
  return hangsAtFront(geometry) ? undefined : why;
}

/** Without a loop that comes apart, of which other rows speak: cords that hang beside it are still there. */
function closed(geometry: CordGeometry): CordGeometry {
  if (geometry.loop?.device !== "breakaway") return geometry;
  const { loop: _loop, ...rest } = geometry;
  return rest;
}

function breaksAway({ loop }: CordGeometry): string {
  return loop?.device === "breakaway" ? "The loop breaks away: other rows speak of it." : NOTHING_AT_FRONT;
}

function twoPulls({ pulls }: CordGeometry): string | undefined {
  if (pulls.length === 0) return NO_PULL;
  return cordCount(pulls) < 2 ? ONE_PULL : undefined;
}

export function cordCount(pulls: readonly PullCords[]): number {
  return pulls.reduce((sum, { count }) => sum + count, 0);
}

function joinedAt(geometry: CordGeometry, raise: number): number {
  const { a, b } = twoLongestAt(geometry, raise);
  return a + b;
}

/** A cord under a pull, by its own stretch; as it hangs where no pull is asked for. */
export function stretchedMm({ stretchPerN }: CordGeometry, lengthMm: number, pullN = 0): number {
  return lengthMm * (1 + stretchPerN * pullN);
}

/** The two longest free ends, which may hang out of different locks. */
function twoLongestAt({ pulls }: CordGeometry, raise: number): { a: number; b: number } {
  const lengths = pulls.flatMap(({ count, lengthMm }) =>
    new Array<number>(Math.min(2, count)).fill(courseAt(lengthMm, raise)),
  );
  const [a = 0, b = 0] = lengths.sort((one, other) => other - one);
  return { a, b };
}

export function longest({ pulls }: CordGeometry, raise: number): NamedCord {
  let most = pulls[0];
  for (const pull of pulls) {
    if (most === undefined || courseAt(pull.lengthMm, raise) > courseAt(most.lengthMm, raise)) most = pull;
  }
  const rail = most?.raises === "top-rail" ? " of the top rail" : "";
  const text =
    most?.from === "last eye"
      ? `the ${most.count === 1 ? "cord" : "cords"} below the last eye`
      : most?.count === 1
        ? `the cord${rail} below its lock`
        : `the cords${rail} below their lock`;
  return { text, cords: whereHung(most) };
}

/** Loops that loose cords can form, of whichever hang longest. */
export function looseLoop(geometry: CordGeometry, raise: number): NamedCord {
  return geometry.pulls.length === 0
    ? { text: "the loose loop", cords: "loop" }
    : { text: "the loop that the hanging cords can form", cords: longest(geometry, raise).cords };
}

/** Cords of a top rail stay whatever raises the shade. */
function whereHung(cords: PullCords | undefined): "rail" | "front" {
  return cords?.raises === "top-rail" ? "rail" : "front";
}
