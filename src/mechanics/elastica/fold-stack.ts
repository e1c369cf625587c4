import { findRoot } from "../solve/find-root.ts";
import { type DropFamily, dropFamily } from "./drop-family.ts";
import { foldWeight } from "./fold-level.ts";

/** Gathered folds that hang from one line of hinges, each in front of the one below it. */
export interface FoldStackProblem {
  /** Cloth in each fold, from the lowest (the hindmost) up, mm. */
  arcsMm: readonly number[];
  weightNPerMm2: number;
  rigidityNmm: number;
  /** All layers together, mm. */
  thicknessMm: number;
  /** The flat piece that hangs behind them, below the lowest row. */
  skirt: Skirt;
  /** From the line of the hinges back to a pane, mm. */
  paneMm?: number;
}

/** Its length, weight for each mm of width, and how far down that acts. */
export interface Skirt {
  lengthMm: number;
  weightNPerMm: number;
  centreMm: number;
  /** How far its front leans forward by itself, as where it is a soft fold and no flat piece. */
  leanRad?: number;
}

/** A skirt so heavy that nothing swings it: a soft fold, which holds those above it off. */
export function fixedSkirt(leanRad: number): Skirt {
  return { lengthMm: 1, centreMm: 1, weightNPerMm: 1e9, leanRad };
}

/** How they hang. Angles are from the vertical, forward positive, about the line of hinges. */
export interface FoldStack {
  /** Planes between neighbours, from the one behind the lowest fold to the front of the last. */
  planesRad: number[];
  /** Half the angle of each drop, thickness left out. */
  halvesRad: number[];
  /** What is passed on at each of those planes, as a moment about the hinges for each mm of width, N. */
  momentsN: number[];
  /** How far the foremost fold stands out from the line of hinges, and the skirt behind it. */
  frontMm: number;
  behindMm: number;
  /** Lowest point of the folds below the hinges. */
  bottomMm: number;
}

/** A moment is found within this share of itself: far below what is known of any cloth. */
const MOMENT_WIDTH = 1e-6;
/** Rounds in which a drop and what leans on it settle: each takes an error to a tenth. */
const ROUNDS = 4;

/**
 * Neighbours touch along planes through the hinges, about which the hinges give no moment. So what is in front of a plane
 * leans on it with just its own weight's moment, M_k = Σ_{j ≥ k} W_j ȳ_j sin α_j, and that presses the drops behind it to a
 * smaller angle (`DropFamily`; each takes the mean of the moments on its two sides). Drops are taken as even about their own
 * axes.
 */
export function stackFolds(problem: FoldStackProblem): FoldStack {
  const drops = dropsOf(problem);
  const most = drops.reduce((sum, { pull }) => sum + pull, 0);
  const leftOfNone = leftAfter(drops, 0, skirtRad(problem, 0));
  const left = (moment: number) =>
    moment === 0 ? leftOfNone : leftAfter(drops, moment, skirtRad(problem, moment));
  const root = drops.length === 0 || leftOfNone >= 0 ? undefined : findRoot(left, 0, most, MOMENT_WIDTH);
  const moment =
    root === undefined || root.kind === "noBracket" ? 0 : root.kind === "converged" ? root.value : root.best;
  return described(problem, drops, keptDown(lean(problem, drops, moment)));
}

/** Folds that would stand up past this lie under the cloth above their row, which presses them down, rad. */
const STEEPEST_RAD = 1.9;

/** A stack of too many or too stiff folds, pressed into the room it has. */
function keptDown(found: Lean): Lean {
  const [back, front] = [found.planes[0] ?? 0, found.planes.at(-1) ?? 0];
  if (front <= STEEPEST_RAD) return found;
  const share = (STEEPEST_RAD - back) / (front - back);
  return {
    ...found,
    planes: found.planes.map((plane) => back + share * (plane - back)),
    halves: found.halves.map((half) => share * half),
  };
}

interface Drop {
  family: DropFamily;
  halfMm: number;
  /** Its weight times how far down that acts, for each mm of width, N. */
  pull: number;
  /** From moments in N to those of the family. */
  scale: number;
  /** Angle that its cloth takes by being thick. */
  thickRad: number;
}

/** Where the loop of a drop is widest, and where its weight acts, in half arcs: 0.8 to 0.93 and 0.46 to 0.5, by the solver. */
const WIDEST = 0.87;
const CENTRE = 0.485;

function dropsOf(problem: FoldStackProblem): Drop[] {
  const { arcsMm, weightNPerMm2, rigidityNmm, thicknessMm } = problem;
  const drops: Drop[] = [];
  const families = new Map<number, DropFamily>();
  for (const arcMm of arcsMm) {
    const halfMm = arcMm / 2;
    const family = families.get(arcMm) ?? dropFamily(foldWeight(problem, arcMm));
    families.set(arcMm, family);
    const pull = weightNPerMm2 * arcMm * CENTRE * halfMm;
    drops.push({
      family,
      halfMm,
      pull,
      scale: halfMm / rigidityNmm,
      thickRad: Math.atan(thicknessMm / (WIDEST * halfMm)),
    });
  }
  return drops;
}

interface Lean {
  planes: number[];
  halves: number[];
  moments: number[];
  /** Moment that nothing takes up in front of the last fold: 0 when the guess was right. */
  left: number;
}

/** The stack from behind to front for a guess of what leans on the skirt. */
function lean(problem: FoldStackProblem, drops: readonly Drop[], moment: number): Lean {
  const found: Lean = { planes: [skirtRad(problem, moment)], halves: [], moments: [moment], left: moment };
  for (const drop of drops) {
    const from = found.planes[found.planes.length - 1] ?? 0;
    const half = settled(drop, from, found.left);
    found.left = half.left;
    found.halves.push(half.rad);
    found.planes.push(from + 2 * (half.rad + drop.thickRad));
    found.moments.push(half.left);
  }
  return found;
}

/** What `lean` leaves, and nothing besides: it is asked a dozen times for each shade. */
function leftAfter(drops: readonly Drop[], moment: number, skirt: number): number {
  let left = moment;
  let plane = skirt;
  for (const drop of drops) {
    const half = settled(drop, plane, left);
    plane += 2 * (half.rad + drop.thickRad);
    left = half.left;
  }
  return left;
}

/** Half the angle of a drop that begins at a plane, and what leans on the next one. */
function settled(
  { family, pull, scale, thickRad }: Drop,
  from: number,
  moment: number,
): { rad: number; left: number } {
  let rad = family.freeRad;
  let left = 0;
  for (let round = 0; round < ROUNDS; round++) {
    left = moment - pull * Math.sin(Math.min(Math.PI / 2, from + rad + thickRad));
    rad = family.halfRad((scale * (moment + left)) / 2);
  }
  return { rad, left };
}

/** The skirt swings back until its own weight, or the pane, holds what leans on it. */
function skirtRad({ skirt, paneMm }: FoldStackProblem, moment: number): number {
  const pull = skirt.weightNPerMm * skirt.centreMm;
  const free = pull > 0 ? Math.atan(moment / pull) : moment > 0 ? Math.PI / 2 : 0;
  const room =
    paneMm === undefined || skirt.lengthMm <= paneMm ? Math.PI / 2 : Math.asin(paneMm / skirt.lengthMm);
  return (skirt.leanRad ?? 0) - Math.min(free, room);
}

function described(
  problem: FoldStackProblem,
  drops: readonly Drop[],
  { planes, halves, moments }: Lean,
): FoldStack {
  let [frontMm, bottomMm] = [0, problem.skirt.lengthMm];
  drops.forEach(({ halfMm, thickRad }, k) => {
    const half = halves[k] ?? 0;
    const axis = (planes[k] ?? 0) + half + thickRad;
    // A loop round a circle that touches both planes, with as much cloth as there is.
    const middle = halfMm / (Math.cos(half) + Math.sin(half) * (Math.PI / 2 + half));
    const radius = middle * Math.sin(half);
    frontMm = Math.max(frontMm, middle * Math.sin(axis) + radius);
    bottomMm = Math.max(bottomMm, middle * Math.cos(axis) + radius);
  });
  const behindMm = Math.max(0, -Math.sin(planes[0] ?? 0) * problem.skirt.lengthMm);
  return { planesRad: planes, halvesRad: halves, momentsN: moments, frontMm, behindMm, bottomMm };
}
