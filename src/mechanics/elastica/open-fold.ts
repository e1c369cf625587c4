import { follow } from "./follow.ts";
import { hangFromNothing } from "./hang-strip.ts";
import { type LeaningProblem, type LeaningState, leanStrip } from "./leaning-strip.ts";
import { DROP_NODES } from "./pressed-drop.ts";
import type { StripState } from "./strip.ts";

/** Shapes of one fold at the knots of its way, where they were found. */
export type Path = readonly (LeaningState | undefined)[];

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
  /** As it hangs in the stack at the end. */
  last?: Float64Array;
  /** A fold with as much cloth whose way is known: near enough to start from. */
  like?: Path;
}

/**
 * Slopes of a fold at one closing (0 flat, 1 gathered), all along its cloth. Ways that were found are kept in `paths`, found
 * in the same order each time, so that a height looks alike whichever was asked for before it. Undefined where none was found.
 */
export function openSlope(
  paths: Map<string, Path>,
  course: FoldCourse,
  closing: number,
): Float64Array | undefined {
  const path = pathOf(paths, course);
  const at = Math.max(JUST_OPEN, closing);
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

function pathOf(paths: Map<string, Path>, course: FoldCourse): Path {
  const known = paths.get(course.key);
  if (known !== undefined) return known;
  const path: (LeaningState | undefined)[] = KNOTS.map(() => undefined);
  const first = firstOf(course);
  if (first !== undefined) {
    path[FIRST] = first;
    for (const way of [-1, 1]) walk(course, path, way);
  }
  paths.set(course.key, path);
  return path;
}

function firstOf(course: FoldCourse): LeaningState | undefined {
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

function walk(course: FoldCourse, path: (LeaningState | undefined)[], way: number): void {
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
