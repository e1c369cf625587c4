import type { Solved } from "../solve/outcome.ts";
import { follow } from "./follow.ts";
import { hangFromNothing } from "./hang-strip.ts";
import { type LeaningProblem, type LeaningState, leanStrip } from "./leaning-strip.ts";
import { DROP_NODES } from "./pressed-drop.ts";
import type { StripState } from "./strip.ts";

/** Shapes of one fold at the knots of its way, where they were looked for and found. */
type Path = (LeaningState | undefined)[];

/** What was found of the folds of one cloth. */
export interface Ways {
  /** By the keys of their courses. */
  paths: Map<string, Path>;
  /** Hanging free at the knot where each is begun, by their weights: all that lean on something begin from there. */
  free: Map<number, Solved<StripState>>;
}

export function newWays(): Ways {
  return { paths: new Map(), free: new Map() };
}

/** Folds less open than this share of their cloth are drawn on from here: they stand out as the root of the slack. */
const JUST_OPEN = 0.01;
/** From here on an open fold gives way to the drop of the stack, which differs a little from its own last shape. */
const TURNS_AT = 0.5;
/** Closings at which an open fold is solved first, the easiest to begin with at `FIRST`; every other starts between two. */
const KNOTS = [0.01, 0.03, 0.08, 0.16, 0.26, 0.38, 0.52, 0.66, 0.8, 0.92, 1] as const;
const FIRST = 4;
/** Intervals of an open fold: within 0.2 mm of a mesh four times as fine in a fold of 200 mm. Limper cloth bends sharper. */
const OPEN_NODES = 48;
const LIMP_NODES = 112;
const LIMP_FROM = 800;
/** From knot to knot no slope may turn by more than this, rad: more is another branch. */
const KNOT_REACH_RAD = 1.2;

/** The way of one fold from flat to gathered. */
export interface FoldCourse {
  key: string;
  problem(closing: number): LeaningProblem;
  /** As it hangs in the stack at the end; without it the course is that of one height, and no other starts from it. */
  last?: Float64Array;
  /** A fold with as much cloth whose way is known: near enough to start from. */
  like?: Path;
}

/**
 * Slopes of a fold at one closing (0 flat, 1 gathered), all along its cloth. What was found is kept in `ways`, found
 * in the same order each time, so that a height looks alike whichever was asked for before it. Undefined where none was found.
 */
export function openSlope(ways: Ways, course: FoldCourse, closing: number): Float64Array | undefined {
  const at = Math.max(JUST_OPEN, closing);
  const path = pathOf(ways, course, at);
  const state = stateAt(path, course, at);
  if (state === undefined) return undefined;
  const whole = wholeSlope(state, course.problem(at));
  return at > closing ? opening(whole, closing / at) : ending(course, whole, path.at(-1), closing);
}

/** How much of its weight a closing fold has laid on those below it: eased, so that nothing jerks. */
export function leaning(closing: number): number {
  return closing * closing * (3 - 2 * closing);
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
  { last, problem }: FoldCourse,
  slope: Float64Array,
  end: LeaningState | undefined,
  closing: number,
): Float64Array {
  if (last === undefined || end === undefined || closing <= TURNS_AT) return slope;
  const part = leaning((closing - TURNS_AT) / (1 - TURNS_AT));
  const whole = wholeSlope(end, problem(1));
  return slope.map((angle, i) => angle + part * ((last[i] as number) - (whole[i] as number)));
}

function stateAt(path: Path, course: FoldCourse, closing: number): LeaningState | undefined {
  const k = knotAbove(closing);
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

/** The knots before and at it are those that a closing lies between. */
function knotAbove(closing: number): number {
  let k = 1;
  while (k + 1 < KNOTS.length && (KNOTS[k] as number) < closing) k++;
  return k;
}

/** The way of a fold: all of it, or of a course that only one height has, as far as that height. */
function pathOf(ways: Ways, course: FoldCourse, closing: number): Path {
  const known = ways.paths.get(course.key);
  if (known !== undefined && course.last !== undefined) return known;
  const path = known ?? begun(ways, course);
  ways.paths.set(course.key, path);
  if (path[FIRST] === undefined) return path;
  const above = knotAbove(closing);
  walk(course, path, -1, course.last === undefined ? above - 1 : 0);
  walk(course, path, 1, course.last === undefined ? above : KNOTS.length - 1);
  return path;
}

function begun(ways: Ways, course: FoldCourse): Path {
  const path: Path = KNOTS.map(() => undefined);
  path[FIRST] = firstOf(ways, course);
  return path;
}

function firstOf(ways: Ways, course: FoldCourse): LeaningState | undefined {
  const problem = course.problem(KNOTS[FIRST]);
  const like = course.like?.[FIRST];
  const near = like === undefined ? undefined : leanStrip(problem, like);
  if (near?.kind === "converged") return near.value;
  const free = hangingFree(ways, problem);
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

function hangingFree({ free }: Ways, { weight, gap }: LeaningProblem): Solved<StripState> {
  const known = free.get(weight);
  if (known !== undefined) return known;
  const nodes = weight < LIMP_FROM ? OPEN_NODES : LIMP_NODES;
  const hanging = hangFromNothing({ weight, gap, planes: [] }, nodes);
  free.set(weight, hanging);
  return hanging;
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

/** From where the way begins up to a knot, each from the one before it, as far as they are found. */
function walk(course: FoldCourse, path: Path, way: 1 | -1, until: number): void {
  for (let k = FIRST + way; (until - k) * way >= 0; k += way) {
    if (path[k] !== undefined) continue;
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
