import type { Solved } from "../solve/outcome.ts";
import { foldWeight } from "./fold-level.ts";
import { hangFromNothing, moveStrip } from "./hang-strip.ts";
import { copyState, type Plane, planeForces, type StripProblem, type StripState } from "./strip.ts";
import { endMoments, hangStrip } from "./strip-newton.ts";
import { shapeOf } from "./strip-shape.ts";
import { isStable } from "./strip-stability.ts";

/** A strip of cloth between two rows of hinges, one above the other; forces are for each mm of its width. */
export interface HangingFold {
  /** Cloth between the rows, measured along it, mm. */
  arcMm: number;
  /** Height between the rows, mm; 0 ≤ gap < arc. */
  gapMm: number;
  weightNPerMm2: number;
  /** Flexural rigidity for each mm of width, N·mm²/mm. */
  rigidityNmm: number;
  /** From the line of the rows back to a flat pane, mm; none where left out. */
  paneMm?: number;
  /** The same to what hangs behind below the lower row, such as the folds already gathered. */
  backMm?: number;
  /** How far the lower part of that back leans forward, rad. */
  backTiltRad?: number;
  /** Slopes of ends that are held, rad from the downward vertical, where they are no hinges. */
  topSlopeRad?: number;
  bottomSlopeRad?: number;
}

/** How a fold hangs; x away from the pane, y down from the upper row. */
export interface FoldShape {
  xMm: number[];
  yMm: number[];
  /** From the downward vertical towards the front. */
  slopeRad: number[];
  /** How far the fold stands out, and where along the cloth. */
  depthMm: number;
  depthAtMm: number;
  /** Furthest behind the line of the rows, 0 or less. */
  behindMm: number;
  /** How far it hangs below the lower row. */
  droopMm: number;
  /** What the rows carry, upwards, and pull the cloth together with, N/mm. The lower is below 0 where it must be held down. */
  upAtTopNPerMm: number;
  upAtBottomNPerMm: number;
  backwardAtTopNPerMm: number;
  forwardAtBottomNPerMm: number;
  /** What pane and back push forward with altogether, N/mm. */
  pushNPerMm: number;
  /** It would stay so: the second variation of its energy is positive. */
  stable: boolean;
  /** Moments that hold the ends for each mm of width, N: what cloth that runs on through a row passes on; 0 at a hinge. */
  momentAtTopN: number;
  momentAtBottomN: number;
}

/** Intervals of a fold: the 40 published cases come out within 1e-6 of the half arc. */
export const FOLD_NODES = 160;

/**
 * The heavy elastica between two hinges (see `StripProblem`), with a frictionless pane where one is given.
 *
 * @throws where the gap is not shorter than the arc, or the cloth has no stiffness or less than no weight
 */
export function hangFold(fold: HangingFold, nodes = FOLD_NODES): Solved<FoldShape> {
  const problem = problemOf(fold);
  return inMm(fold, problem, hangFromNothing(problem, nodes));
}

/**
 * One fold at many heights. Each shape starts from the last two, drawn on in a straight line, so heights in order cost
 * least; a height that fails leaves the next to start afresh.
 *
 * @throws where the gap is not shorter than the arc, or the cloth has no stiffness or less than no weight
 */
export function hangFolds(
  fold: Omit<HangingFold, "gapMm">,
  gapsMm: readonly number[],
  nodes = FOLD_NODES,
): Solved<FoldShape>[] {
  let last: Hung | undefined;
  let before: Hung | undefined;
  return gapsMm.map((gapMm) => {
    const one = { ...fold, gapMm };
    const problem = problemOf(one);
    const solved = nextShape(problem, last, before, nodes);
    if (solved.kind === "converged") [before, last] = [last, { problem, state: solved.value }];
    else [before, last] = [undefined, undefined];
    return inMm(one, problem, solved);
  });
}

interface Hung {
  problem: StripProblem;
  state: StripState;
}

function nextShape(
  problem: StripProblem,
  last: Hung | undefined,
  before: Hung | undefined,
  nodes: number,
): Solved<StripState> {
  if (last === undefined) return hangFromNothing(problem, nodes);
  if (before !== undefined) {
    const drawnOn = hangStrip(problem, drawOn(problem, last, before));
    if (drawnOn.kind === "converged") return drawnOn;
  }
  const moved = moveStrip(last.problem, problem, last.state);
  return moved.kind === "converged" ? moved : hangFromNothing(problem, nodes);
}

function drawOn(problem: StripProblem, last: Hung, before: Hung): StripState {
  const done = last.problem.gap - before.problem.gap;
  const share = done === 0 ? 0 : (problem.gap - last.problem.gap) / done;
  const on = (a: number, b: number) => a + share * (a - b);
  const state = copyState(last.state);
  state.up = on(last.state.up, before.state.up);
  state.side = on(last.state.side, before.state.side);
  state.slope = state.slope.map((slope, i) => on(slope, before.state.slope[i] as number));
  state.push = state.push.map((push, i) => Math.max(0, on(push, before.state.push[i] as number)));
  return state;
}

function problemOf(fold: HangingFold): StripProblem {
  const { arcMm, gapMm, weightNPerMm2, rigidityNmm, paneMm, backMm, backTiltRad } = fold;
  if (!(gapMm >= 0 && gapMm < arcMm)) throw new Error(`invalid gapMm: ${gapMm} in an arc of ${arcMm}`);
  if (!(rigidityNmm > 0)) throw new Error(`invalid rigidityNmm: ${rigidityNmm}`);
  if (!(weightNPerMm2 >= 0)) throw new Error(`invalid weightNPerMm2: ${weightNPerMm2}`);
  const half = arcMm / 2;
  const planes: Plane[] = [];
  if (paneMm !== undefined) planes.push({ out: -paneMm / half, down: 0, tiltRad: 0, facing: 1 });
  if (backMm !== undefined) {
    planes.push({ out: -backMm / half, down: 0, tiltRad: backTiltRad ?? 0, facing: 1, hanging: true });
  }
  const held = {
    ...(fold.topSlopeRad === undefined ? {} : { top: fold.topSlopeRad }),
    ...(fold.bottomSlopeRad === undefined ? {} : { bottom: fold.bottomSlopeRad }),
  };
  return { weight: foldWeight(fold, arcMm), gap: gapMm / half, planes, held };
}

function inMm(fold: HangingFold, problem: StripProblem, solved: Solved<StripState>): Solved<FoldShape> {
  const { iterations, residual } = solved;
  return solved.kind === "converged"
    ? { kind: "converged", value: shapeInMm(fold, problem, solved.value), iterations, residual }
    : { kind: "notConverged", best: shapeInMm(fold, problem, solved.best), iterations, residual };
}

function shapeInMm(
  { arcMm, rigidityNmm, weightNPerMm2 }: HangingFold,
  problem: StripProblem,
  state: StripState,
): FoldShape {
  const half = arcMm / 2;
  const force = rigidityNmm / half ** 2;
  const shape = shapeOf(problem, state);
  const push = planeForces(problem, state, 1);
  const moments = endMoments(problem, state);
  const inHalves = (list: Float64Array) => Array.from(list, (value) => value * half);
  return {
    xMm: inHalves(shape.x),
    yMm: inHalves(shape.y),
    slopeRad: Array.from(state.slope),
    depthMm: shape.depth * half,
    depthAtMm: shape.depthAt * half,
    behindMm: shape.behind * half,
    droopMm: shape.droop * half,
    upAtTopNPerMm: state.up * force,
    upAtBottomNPerMm: weightNPerMm2 * arcMm - (state.up + push.up) * force,
    backwardAtTopNPerMm: state.side * force,
    forwardAtBottomNPerMm: (state.side - push.out) * force,
    pushNPerMm: push.out * force,
    stable: isStable(problem, state),
    momentAtTopN: (moments.top * rigidityNmm) / half,
    momentAtBottomN: (moments.bottom * rigidityNmm) / half,
  };
}
