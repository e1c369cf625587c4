import { cite, sourced } from "../../sources/index.ts";
import { FIT_SLACK, SAME_LENGTH_MM } from "../../units/index.ts";
import { BOARD_END_MM, type BoardLine } from "../gaps.ts";
import type { SeatedDrive } from "./seat-drive.ts";

/** A bearing along the tube, and the most that a tube runs free between two. */
export const SUPPORT_LENGTH = sourced(12, "mm", cite("our-choice", "a common bearing; measure your own"));
export const LARGEST_BAY = sourced(600, "mm", cite("our-choice", "and how far it bends is judged"));
/** So many more are tried where spools stand in the way. */
const MORE = 3;

export interface PlacedSupports {
  /** From the control side, mm. */
  supportsMm: number[];
  tubeFromMm: number;
  tubeToMm: number;
  /** A support found no place clear of spools and drive, or two had to come too far apart. */
  faults: ("clear" | "spacing")[];
}

type Stretch = readonly [from: number, to: number];

/**
 * Bearings of the tube: one beyond the spool at each end, the drive standing in for one where it sits there,
 * and as many between as keep the tube from running free too far; none on a spool or on the drive.
 */
export function placeSupports(line: BoardLine, drive: SeatedDrive): PlacedSupports {
  const blocked = blockedStretches(line, drive);
  const faults = new Set<"clear" | "spacing">();
  const near = nearEnd(line, drive, blocked, faults);
  // The far end is the near end of the board turned round.
  const turned = turnedRound(line, drive);
  const farTurned = nearEnd(turned.line, turned.drive, blockedStretches(turned.line, turned.drive), faults);
  const flip = (x: number) => line.boardFromMm + line.boardToMm - x;
  const far: End = {
    bearingMm: flip(farTurned.bearingMm),
    tubeEndMm: flip(farTurned.tubeEndMm),
    isSupport: farTurned.isSupport,
  };
  if (near.isSupport && far.isSupport && far.bearingMm - near.bearingMm < SUPPORT_LENGTH.value) {
    faults.add("clear");
  }
  const half = line.housingLengthMm / 2;
  const inner: [number, number][] =
    drive.place === "between"
      ? [
          [near.bearingMm, drive.atMm - half],
          [drive.atMm + half, far.bearingMm],
        ]
      : [[near.bearingMm, far.bearingMm]];
  const between = inner.flatMap(([from, to]) => spread(from, to, blocked, faults));
  const supportsMm = [
    ...(near.isSupport ? [near.bearingMm] : []),
    ...between,
    ...(far.isSupport ? [far.bearingMm] : []),
  ];
  return {
    supportsMm,
    tubeFromMm: Math.min(near.tubeEndMm, far.tubeEndMm),
    tubeToMm: Math.max(near.tubeEndMm, far.tubeEndMm),
    faults: [...faults],
  };
}

interface End {
  bearingMm: number;
  tubeEndMm: number;
  isSupport: boolean;
}

function nearEnd(
  line: BoardLine,
  drive: SeatedDrive,
  blocked: readonly Stretch[],
  faults: Set<"clear" | "spacing">,
): End {
  if (drive.place === "outside") {
    const face = drive.atMm + line.housingLengthMm / 2;
    return { bearingMm: face, tubeEndMm: face, isSupport: false };
  }
  const half = SUPPORT_LENGTH.value / 2;
  const firstSpool = line.eyesMm[0] ?? line.boardFromMm;
  const beside = line.eyeRadiusMm + line.straightRunMm + half;
  const outside = firstSpool - beside;
  const boardEndMm = line.boardFromMm + BOARD_END_MM;
  if (outside - half >= boardEndMm - SAME_LENGTH_MM) {
    return { bearingMm: outside, tubeEndMm: outside - half, isSupport: true };
  }
  // No wood beyond the last spool: the bearing goes inside it, and the tube ends with the spool.
  const inside = nextClear(blocked, firstSpool + beside, line.boardToMm - half);
  if (inside === undefined) faults.add("clear");
  return {
    bearingMm: inside ?? firstSpool + beside,
    tubeEndMm: Math.max(line.boardFromMm, firstSpool - line.eyeRadiusMm),
    isSupport: true,
  };
}

function turnedRound(line: BoardLine, drive: SeatedDrive): { line: BoardLine; drive: SeatedDrive } {
  const flip = (x: number) => line.boardFromMm + line.boardToMm - x;
  const turn = { outside: "far", far: "outside", between: "between" } as const;
  return {
    line: { ...line, eyesMm: line.eyesMm.map(flip).reverse() },
    drive: { ...drive, atMm: flip(drive.atMm), place: turn[drive.place] },
  };
}

/** Where the middle of a support cannot be, joined where they overlap. */
function blockedStretches(line: BoardLine, drive: SeatedDrive): Stretch[] {
  const beside = line.straightRunMm + SUPPORT_LENGTH.value / 2;
  const around = (at: number, half: number): [number, number] => [at - half - beside, at + half + beside];
  const all = [
    ...line.eyesMm.map((spool) => around(spool, line.eyeRadiusMm)),
    around(drive.atMm, line.housingLengthMm / 2),
  ].sort((a, b) => a[0] - b[0]);
  const joined: [number, number][] = [];
  for (const stretch of all) {
    const last = joined.at(-1);
    if (last !== undefined && stretch[0] < last[1] - SAME_LENGTH_MM) last[1] = Math.max(last[1], stretch[1]);
    else joined.push(stretch);
  }
  return joined;
}

function inTheWay(blocked: readonly Stretch[], at: number): Stretch | undefined {
  return blocked.find(([from, to]) => at > from + SAME_LENGTH_MM && at < to - SAME_LENGTH_MM);
}

function nextClear(blocked: readonly Stretch[], wish: number, most: number): number | undefined {
  const at = inTheWay(blocked, wish)?.[1] ?? wish;
  return at <= most ? at : undefined;
}

function nearestClear(
  blocked: readonly Stretch[],
  wish: number,
  low: number,
  high: number,
): number | undefined {
  const stretch = inTheWay(blocked, wish);
  if (stretch === undefined) return wish;
  const [before, after] = stretch;
  const canBefore = before > low;
  const canAfter = after < high;
  if (canBefore && (!canAfter || wish - before <= after - wish + SAME_LENGTH_MM)) return before;
  return canAfter ? after : undefined;
}

/** Evenly between two bearings, each moved to the nearest clear place; more of them where that breaks the spacing. */
function spread(
  fromMm: number,
  toMm: number,
  blocked: readonly Stretch[],
  faults: Set<"clear" | "spacing">,
): number[] {
  const fewest = Math.max(0, Math.ceil((toMm - fromMm) / LARGEST_BAY.value - FIT_SLACK) - 1);
  let first: number[] | undefined;
  for (let count = fewest; count <= fewest + MORE; count++) {
    const wished = Array.from(
      { length: count },
      (_, i) => fromMm + ((toMm - fromMm) * (i + 1)) / (count + 1),
    );
    const places = wished.flatMap((wish) => nearestClear(blocked, wish, fromMm, toMm) ?? []);
    const apart = places.filter((at, i) => i === 0 || at - (places[i - 1] ?? at) >= SUPPORT_LENGTH.value);
    const marks = [fromMm, ...apart, toMm];
    if (marks.every((at, i) => i === 0 || at - (marks[i - 1] ?? at) <= LARGEST_BAY.value + SAME_LENGTH_MM)) {
      return apart;
    }
    first ??= apart;
  }
  faults.add("spacing");
  return first ?? [];
}
