/** Brackets or screws along a board, as places on one line, mm. */
export interface FixingProblem {
  /** Ends of the board. */
  fromMm: number;
  toMm: number;
  /** The outer ones lie at most so far from the ends. */
  endMm: number;
  /** Neighbours are at most so far apart. */
  largestMm: number;
  /** Width of one along the board. */
  widthMm: number;
  /** So many do without anything in their way. */
  fewest: number;
  /** Stretches that none must cover. */
  keepOut: readonly (readonly [number, number])[];
}

/** What could not be kept: clear of eyes and lock, near enough to the ends, near enough to each other. */
export type FixingFault = "clear" | "end" | "spacing";

/** Middles of the fixings from left to right, mm, and what could not be kept. */
export interface PlacedFixings {
  placesMm: number[];
  faults: FixingFault[];
}

const SLACK_MM = 1e-6;
/** So many more are tried where eyes and lock stand in the way. */
const MORE = 4;

/**
 * The fewest, evenly spread, each moved to the nearest place that is clear; one more where moving them breaks
 * the spacing. Where nothing keeps to all, the fewest are placed, with what they break.
 */
export function placeFixings(problem: FixingProblem): PlacedFixings {
  const { fromMm, toMm, widthMm, fewest } = problem;
  const blocked = blockedStretches(problem);
  if (fewest < 2) return onlyOne(problem, blocked);
  const roomFor = Math.floor((toMm - fromMm) / widthMm);
  const most = Math.max(fewest, Math.min(roomFor, fewest + MORE));
  let first: PlacedFixings | undefined;
  for (let count = fewest; count <= most; count++) {
    const placed = spread(problem, blocked, count);
    if (placed.faults.length === 0) return placed;
    first ??= placed;
  }
  return first ?? onlyOne(problem, blocked);
}

function onlyOne({ fromMm, toMm }: FixingProblem, blocked: Stretch[]): PlacedFixings {
  const middle = (fromMm + toMm) / 2;
  const place = nearestClear(blocked, middle, fromMm, toMm);
  return { placesMm: [place ?? middle], faults: place === undefined ? ["clear"] : [] };
}

type Stretch = [from: number, to: number];

/** Where the middle of a fixing cannot be, joined where they overlap. */
function blockedStretches({ keepOut, widthMm }: FixingProblem): Stretch[] {
  const wide = keepOut
    .map(([from, to]): Stretch => [from - widthMm / 2, to + widthMm / 2])
    .sort((a, b) => a[0] - b[0]);
  const joined: Stretch[] = [];
  for (const stretch of wide) {
    const last = joined.at(-1);
    if (last && stretch[0] < last[1]) last[1] = Math.max(last[1], stretch[1]);
    else joined.push(stretch);
  }
  return joined;
}

function nearestClear(blocked: Stretch[], wish: number, low: number, high: number): number | undefined {
  const inTheWay = blocked.find(([from, to]) => wish > from && wish < to);
  if (inTheWay === undefined) return wish;
  const [before, after] = inTheWay;
  const canBefore = before >= low - SLACK_MM;
  const canAfter = after <= high + SLACK_MM;
  if (canBefore && (!canAfter || wish - before <= after - wish)) return before;
  return canAfter ? after : undefined;
}

function spread(problem: FixingProblem, blocked: Stretch[], count: number): PlacedFixings {
  const { fromMm, toMm, widthMm, endMm, largestMm } = problem;
  const low = fromMm + widthMm / 2;
  const high = toMm - widthMm / 2;
  const faults = new Set<FixingFault>();
  const place = (wish: number, from: number, to: number): number => {
    const found = nearestClear(blocked, wish, from, to);
    if (found === undefined) faults.add("clear");
    return found ?? wish;
  };
  // The outer ones move towards the ends first: inwards they would let the board hang over further.
  const first =
    nearestClear(blocked, fromMm + endMm, low, fromMm + endMm) ?? place(fromMm + endMm, low, high);
  const last = nearestClear(blocked, toMm - endMm, toMm - endMm, high) ?? place(toMm - endMm, low, high);
  if (first - fromMm > endMm + SLACK_MM || toMm - last > endMm + SLACK_MM) faults.add("end");
  const wished = [first];
  for (let i = 1; i < count - 1; i++) {
    wished.push(place(first + ((last - first) * i) / (count - 1), first, last));
  }
  const placesMm = withoutOverlap(wished, last, widthMm);
  if (placesMm.length < Math.min(count, problem.fewest)) return unmoved(problem, count);
  for (let i = 1; i < placesMm.length; i++) {
    if ((placesMm[i] ?? 0) - (placesMm[i - 1] ?? 0) > largestMm + SLACK_MM) faults.add("spacing");
  }
  return { placesMm, faults: [...faults] };
}

/** So much is in the way that moving helps nothing: evenly spread, and the finding says that they are not clear. */
function unmoved({ fromMm, toMm, endMm }: FixingProblem, count: number): PlacedFixings {
  const step = (toMm - fromMm - 2 * endMm) / (count - 1);
  return {
    placesMm: Array.from({ length: count }, (_, i) => fromMm + endMm + i * step),
    faults: ["clear"],
  };
}

/** Two that were moved to one place are one. The last always stays. */
function withoutOverlap(wished: readonly number[], last: number, widthMm: number): number[] {
  const kept: number[] = [];
  for (const at of wished) {
    const before = kept.at(-1);
    const clear = before === undefined || at - before >= widthMm - SLACK_MM;
    if (clear && last - at >= widthMm - SLACK_MM) kept.push(at);
  }
  return [...kept, last];
}
