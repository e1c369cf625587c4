import { closeEdges } from "./close-strip.ts";
import { dropFamily } from "./drop-family.ts";
import { type FoldStack, type FoldStackProblem, stackFolds } from "./fold-stack.ts";
import { follow } from "./follow.ts";
import { hangFromNothing } from "./hang-strip.ts";
import { type LeaningProblem, type LeaningState, leanStrip } from "./leaning-strip.ts";
import { DROP_NODES } from "./pressed-drop.ts";
import type { StripState } from "./strip.ts";

/** The cloth of a shade as its folds feel it. */
export type FoldCloth = Omit<FoldStackProblem, "arcsMm">;

/** One stretch of cloth between two rows: cloth in it, and the height between the rows now. */
export interface FoldPlace {
  arcMm: number;
  gapMm: number;
}

/** How that cloth hangs. Points are out from the line of the rows and down from the upper row, mm. */
export interface LaidFold {
  outline: [outMm: number, downMm: number][];
  outMm: number;
  behindMm: number;
  /** Lowest point, down from the upper row. */
  bottomMm: number;
  state: "flat" | "open" | "gathered";
}

export interface LaidFolds {
  folds: LaidFold[];
  /** How far the apron below the lowest row swings: forward positive, so 0 or less. */
  apronRad: number;
  /** The soft fold below the lowest row, where there is one. */
  under?: LaidFold;
}

/** Folds less open than this share of their cloth are drawn on from here: they stand out as the root of the slack. */
const JUST_OPEN = 0.01;
/** From here on an open fold gives way to the drop of the stack, which differs a little from its own last shape. */
const TURNS_AT = 0.5;
/** Rows this near are together. */
const SAME_MM = 1e-6;
/** Closings at which an open fold is solved first, the easiest to begin with at `FIRST`; every other starts between two. */
const KNOTS = [0.01, 0.03, 0.08, 0.16, 0.26, 0.38, 0.52, 0.66, 0.8, 0.92, 1] as const;
const FIRST = 4;
/** Intervals of an open fold: within 0.2 mm of a mesh four times as fine in a fold of 200 mm. Limper cloth bends sharper. */
const OPEN_NODES = 48;
const LIMP_NODES = 112;
const LIMP_FROM = 800;
/** Limper cloth is drawn as this: its fold stands out by a few parts in a hundred of its cloth anyway. */
const LIMPEST = 4000;
/** From knot to knot no slope may turn by more than this, rad: more is another branch. */
const KNOT_REACH_RAD = 1.2;

/**
 * All folds of a shade at one height, from the lowest up. Gathered ones hang as pressed drops (`stackFolds`); one that is on
 * its way is a heavy elastica in front of the pane and of the drops below it. Undefined where a shape was not found, so that
 * the caller can draw limp cloth and say so.
 */
export function layFolds(
  cloth: FoldCloth,
  places: readonly FoldPlace[],
  under?: FoldPlace,
): LaidFolds | undefined {
  if (under !== undefined) return layOver(cloth, places, under);
  const memo = memoOf(cloth);
  const laid: LaidFold[] = [];
  const stack = stackNow(memo, cloth, places);
  for (let k = 0; k < places.length; k++) {
    const place = places[k] as FoldPlace;
    const fold =
      place.arcMm - place.gapMm < SAME_MM
        ? flat(place)
        : place.gapMm < SAME_MM
          ? gathered(cloth, place, stack, k)
          : open(memo, cloth, places, k, laid[k - 1]);
    if (fold === undefined) return undefined;
    laid.push(fold);
  }
  return { folds: laid, apronRad: stack.planesRad[0] ?? 0 };
}

type Path = (LeaningState | undefined)[];

/** The same over a soft fold that hangs below the lowest row for good: those above lean on its outer side. */
function layOver(cloth: FoldCloth, places: readonly FoldPlace[], under: FoldPlace): LaidFolds | undefined {
  const memo = memoOf(cloth);
  const key = `${under.arcMm} ${under.gapMm}`;
  const known = memo.over.get(key);
  const lowest = known?.under ?? layFolds(cloth, [under])?.folds[0];
  if (lowest === undefined) return undefined;
  const above = known?.above ?? { ...cloth, apron: fixedAt(outerTilt(lowest)) };
  memo.over.set(key, { under: lowest, above });
  const laid = layFolds(above, places);
  return laid === undefined ? undefined : { ...laid, under: lowest };
}

/** An apron so heavy that nothing swings it. */
function fixedAt(leanRad: number): FoldCloth["apron"] {
  return { lengthMm: 1, centreMm: 1, weightNPerMm: 1e9, leanRad };
}

interface Memo {
  stacks: Map<string, FoldStack>;
  paths: Map<string, Path>;
  /** Soft folds below the lowest row, and the cloth as those above them feel it. */
  over: Map<string, { under: LaidFold; above: FoldCloth }>;
}

/** Shapes already found, kept as long as the cloth they belong to. */
const memos = new WeakMap<FoldCloth, Memo>();

function memoOf(cloth: FoldCloth): Memo {
  const known = memos.get(cloth);
  if (known !== undefined) return known;
  const memo: Memo = { stacks: new Map(), paths: new Map(), over: new Map() };
  memos.set(cloth, memo);
  return memo;
}

function stackOf(memo: Memo, cloth: FoldCloth, arcsMm: readonly number[]): FoldStack {
  const key = arcsMm.join(" ");
  const stack = memo.stacks.get(key) ?? stackFolds({ ...cloth, arcsMm });
  memo.stacks.set(key, stack);
  return stack;
}

/** How many folds at the bottom are gathered. */
function gatheredBelow(places: readonly FoldPlace[], until: number): number {
  let from = until;
  while (from > 0 && (places[from - 1] as FoldPlace).gapMm < SAME_MM) from--;
  return until - from;
}

const arcsOf = (places: readonly FoldPlace[], from: number, to: number) =>
  places.slice(from, to).map(({ arcMm }) => arcMm);

/** The drops at the bottom, giving way to the next fold as it closes. */
function stackNow(memo: Memo, cloth: FoldCloth, places: readonly FoldPlace[]): FoldStack {
  let count = 0;
  while (count < places.length && (places[count] as FoldPlace).gapMm < SAME_MM) count++;
  const now = stackOf(memo, cloth, arcsOf(places, 0, count));
  const next = places[count];
  if (next === undefined || next.arcMm - next.gapMm < SAME_MM) return now;
  const after = stackOf(memo, cloth, arcsOf(places, 0, count + 1));
  const part = leaning(closingOf(next));
  const mix = (a: readonly number[], b: readonly number[]) =>
    a.map((value, i) => value + part * ((b[i] ?? value) - value));
  return {
    ...now,
    planesRad: mix(now.planesRad, after.planesRad),
    halvesRad: mix(now.halvesRad, after.halvesRad),
  };
}

/** 0 where the fold hangs flat, 1 where its rows have met. */
function closingOf({ arcMm, gapMm }: FoldPlace): number {
  return 1 - gapMm / arcMm;
}

/** How much of its weight a closing fold has laid on those below it: eased, so that nothing jerks. */
function leaning(closing: number): number {
  return closing * closing * (3 - 2 * closing);
}

function flat({ arcMm }: FoldPlace): LaidFold {
  return {
    outline: [
      [0, 0],
      [0, arcMm],
    ],
    outMm: 0,
    behindMm: 0,
    bottomMm: arcMm,
    state: "flat",
  };
}

function gathered(cloth: FoldCloth, place: FoldPlace, stack: FoldStack, k: number): LaidFold | undefined {
  const slope = dropSlope(cloth, place, stack, k);
  return slope === undefined ? undefined : drawn(slope, place, "gathered");
}

/** Slopes of a drop of the stack, turned to where it hangs. */
function dropSlope(
  cloth: FoldCloth,
  { arcMm }: FoldPlace,
  stack: FoldStack,
  k: number,
): Float64Array | undefined {
  const half = stack.halvesRad[k];
  const [back, front] = [stack.planesRad[k], stack.planesRad[k + 1]];
  const family = dropFamily(weightOf(cloth, arcMm));
  if (half === undefined || back === undefined) return undefined;
  const axis = front === undefined ? back + half : (back + front) / 2;
  return family.slope(half)?.map((slope) => slope + axis);
}

function weightOf({ weightNPerMm2, rigidityNmm }: FoldCloth, arcMm: number): number {
  return (weightNPerMm2 * (arcMm / 2) ** 3) / rigidityNmm;
}

function drawn(slope: Float64Array, { arcMm, gapMm }: FoldPlace, state: LaidFold["state"]): LaidFold {
  const outline = polygon(slope, arcMm, gapMm);
  let [outMm, behindMm, bottomMm] = [0, 0, 0];
  for (const [out, down] of outline) {
    outMm = Math.max(outMm, out);
    behindMm = Math.max(behindMm, -out);
    bottomMm = Math.max(bottomMm, down);
  }
  return { outline, outMm, behindMm, bottomMm, state };
}

/** Edges of one length, as long together as the cloth, each at the mean slope of its ends and closed on the lower row. */
function polygon(slope: Float64Array, arcMm: number, gapMm: number): LaidFold["outline"] {
  const n = slope.length - 1;
  const edges = new Float64Array(n);
  for (let i = 0; i < n; i++) edges[i] = ((slope[i] as number) + (slope[i + 1] as number)) / 2;
  closeEdges(edges, (2 * gapMm) / arcMm);
  const edgeMm = arcMm / n;
  const outline: LaidFold["outline"] = [[0, 0]];
  let [out, down] = [0, 0];
  for (let i = 0; i < n; i++) {
    out += edgeMm * Math.sin(edges[i] as number);
    down += edgeMm * Math.cos(edges[i] as number);
    outline.push([out, down]);
  }
  return outline;
}

function open(
  memo: Memo,
  cloth: FoldCloth,
  places: readonly FoldPlace[],
  k: number,
  below: LaidFold | undefined,
): LaidFold | undefined {
  const place = places[k] as FoldPlace;
  const course = courseOf(memo, cloth, places, k, below);
  const path = pathOf(memo, course);
  const closing = closingOf(place);
  const at = Math.max(JUST_OPEN, closing);
  const state = stateAt(path, course, at);
  if (state === undefined) return undefined;
  const whole = wholeSlope(state, course.problem(at));
  const slope = at > closing ? opening(whole, closing / at) : ending(course, whole, path.at(-1), closing);
  return drawn(slope, place, "open");
}

/** Slopes all along the cloth, what lies on the folds below included. */
function wholeSlope({ slope, length }: LeaningState, { tiltRad }: LeaningProblem): Float64Array {
  const n = slope.length - 1;
  return new Float64Array(DROP_NODES + 1).map((_, i) => {
    const at = (((2 * i) / DROP_NODES) * n) / length;
    if (at >= n) return length < 2 ? tiltRad - Math.PI : (slope[n] as number);
    const k = Math.floor(at);
    return (slope[k] as number) + (at - k) * ((slope[k + 1] as number) - (slope[k] as number));
  });
}

/** A fold that has only begun has the same shape, smaller by the root of its slack. */
function opening(slope: Float64Array, share: number): Float64Array {
  const smaller = Math.sqrt(share);
  return slope.map((angle) => angle * smaller);
}

function ending(
  { last, problem }: Course,
  slope: Float64Array,
  end: LeaningState | undefined,
  closing: number,
): Float64Array {
  if (last === undefined || end === undefined || closing <= TURNS_AT) return slope;
  const part = leaning((closing - TURNS_AT) / (1 - TURNS_AT));
  const whole = wholeSlope(end, problem(1));
  return slope.map((angle, i) => angle + part * ((last[i] as number) - (whole[i] as number)));
}

/** The way of one fold from flat to gathered. */
interface Course {
  key: string;
  problem(closing: number): LeaningProblem;
  /** As it hangs in the stack at the end. */
  last?: Float64Array;
  /** A fold with as much cloth whose way is known: near enough to start from. */
  like?: Path;
}

function courseOf(
  memo: Memo,
  cloth: FoldCloth,
  places: readonly FoldPlace[],
  k: number,
  below: LaidFold | undefined,
): Course {
  const { arcMm } = places[k] as FoldPlace;
  const weight = Math.min(LIMPEST, weightOf(cloth, arcMm));
  const problemAt = (closing: number, tiltRad: number): LeaningProblem => ({
    weight,
    gap: 2 * (1 - closing),
    tiltRad: Math.min(MOST_TILT_RAD, tiltRad),
  });
  if (gatheredBelow(places, k) < k) {
    // What is right below is on its way too: its own outer side is the plane.
    const tilt = below === undefined || below.state !== "open" ? 0 : outerTilt(below);
    return { key: `${arcMm} on ${tilt}`, problem: (closing) => problemAt(closing, tilt) };
  }
  const before = stackOf(memo, cloth, arcsOf(places, 0, k));
  const after = stackOf(memo, cloth, arcsOf(places, 0, k + 1));
  const [from, to] = [before.planesRad[k] ?? 0, after.planesRad[k] ?? 0];
  const last = dropSlope(cloth, places[k] as FoldPlace, after, k);
  const like = k > 0 && places[k - 1]?.arcMm === arcMm ? memo.paths.get(keyOf(places, k - 1)) : undefined;
  return {
    key: keyOf(places, k),
    problem: (closing) => problemAt(closing, from + leaning(closing) * (to - from)),
    ...(last === undefined ? {} : { last }),
    ...(like === undefined ? {} : { like }),
  };
}

const keyOf = (places: readonly FoldPlace[], k: number) => arcsOf(places, 0, k + 1).join(" ");

/** Past this the cloth would lie on the fold below rather than lean on it, rad. */
const MOST_TILT_RAD = 1.4;

/** Lean of the outer side of an open fold, from its upper row to where it stands out most. */
function outerTilt({ outline }: LaidFold): number {
  const furthest = outline.reduce((best, point) => (point[0] > best[0] ? point : best));
  return Math.min(Math.PI / 3, Math.atan2(furthest[0], Math.max(1, furthest[1])));
}

function stateAt(path: Path, course: Course, closing: number): LeaningState | undefined {
  let k = 1;
  while (k + 1 < KNOTS.length && (KNOTS[k] as number) < closing) k++;
  const [low, high] = [KNOTS[k - 1] as number, KNOTS[k] as number];
  const [a, b] = [path[k - 1], path[k]];
  if (a === undefined || b === undefined) return undefined;
  const solved = leanStrip(course.problem(closing), mixed(a, b, (closing - low) / (high - low)));
  if (solved.kind === "converged") return solved.value;
  const moved = follow(
    a,
    (part, from) => leanStrip(course.problem(low + part * (closing - low)), from),
    1 / 2,
  );
  return moved.kind === "converged" ? moved.value : undefined;
}

function mixed(a: LeaningState, b: LeaningState, part: number): LeaningState {
  const mix = (from: number, to: number) => from + part * (to - from);
  return {
    slope: a.slope.map((angle, i) => mix(angle, b.slope[i] as number)),
    length: mix(a.length, b.length),
    up: mix(a.up, b.up),
    side: mix(a.side, b.side),
  };
}

/** Always found in the same order, so that a height looks the same whichever was asked for before it. */
function pathOf(memo: Memo, course: Course): Path {
  const known = memo.paths.get(course.key);
  if (known !== undefined) return known;
  const path: Path = KNOTS.map(() => undefined);
  const first = firstOf(course);
  if (first !== undefined) {
    path[FIRST] = first;
    for (const way of [-1, 1]) walk(course, path, way);
  }
  memo.paths.set(course.key, path);
  return path;
}

function firstOf(course: Course): LeaningState | undefined {
  const problem = course.problem(KNOTS[FIRST]);
  const like = course.like?.[FIRST];
  const near = like === undefined ? undefined : leanStrip(problem, like);
  if (near?.kind === "converged") return near.value;
  const nodes = problem.weight < LIMP_FROM ? OPEN_NODES : LIMP_NODES;
  const free = hangFromNothing({ weight: problem.weight, gap: problem.gap, planes: [] }, nodes);
  if (free.kind === "notConverged") return undefined;
  for (const layers of LYING) {
    const leant = leanStrip(
      problem,
      shortened(free.value, layers / Math.cbrt(1 + problem.weight)),
      FIRST_REACH_RAD,
    );
    if (leant.kind === "converged" && leant.value.length <= 2) return leant.value;
  }
  return undefined;
}

/** How much of a fold may lie on what is below it when it is first solved, in lengths of the bend at a hinge, λ^(−1/3). */
const LYING = [0, 0.5, 1, 1.5, 2, 3];
const FIRST_REACH_RAD = 1.5;

/** The upper part of a strip, as if the rest lay on a plane. */
function shortened({ slope, up, side }: StripState, byHalves: number): LeaningState {
  const n = slope.length - 1;
  const length = 2 - byHalves;
  const upper = slope.map((_, i) => {
    const at = (i * length) / 2;
    const k = Math.min(n - 1, Math.floor(at));
    return (slope[k] as number) + (at - k) * ((slope[k + 1] as number) - (slope[k] as number));
  });
  return { slope: upper, up, side, length };
}

function walk(course: Course, path: Path, way: number): void {
  for (let k = FIRST + way; k >= 0 && k < KNOTS.length; k += way) {
    const was = path[k - way] as LeaningState;
    const [here, there] = [KNOTS[k - way] as number, KNOTS[k] as number];
    const like = course.like?.[k];
    const near = like === undefined ? undefined : leanStrip(course.problem(there), like);
    const moved =
      near?.kind === "converged"
        ? near
        : follow(was, (part, from) =>
            leanStrip(course.problem(here + part * (there - here)), from, KNOT_REACH_RAD),
          );
    if (moved.kind === "notConverged") return;
    path[k] = moved.value;
  }
}
