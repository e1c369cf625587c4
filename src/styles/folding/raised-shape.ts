import type { Grid, Row, ShadePoint, Stretch } from "../../shade-plan/index.ts";
import { foldOutline } from "./fold-outline.ts";

/** Where one stretch of cloth stands between two neighbouring rows (or the headrail line and the top row). */
export interface FoldEnds {
  /** Row at its lower end. */
  row: number;
  upperYMm: number;
  lowerYMm: number;
  /** Cloth in it. */
  arcMm: number;
  state: "flat" | "partial" | "gathered";
}

/** One stretch of cloth as it hangs. */
export interface FoldState extends FoldEnds {
  /** (out from the cloth's plane, below the top line), mm. */
  outline: ShadePoint[];
  /** Lowest point of the cloth, mm below the top line. */
  bottomYMm: number;
  outMm: number;
}

/** A stretch whose cloth is not laid yet. */
export interface StandingFold extends FoldEnds {
  /** What gathered folds take behind it, and what each of them adds, mm. */
  behindMm: number;
  depthMm: number;
}

/** Rows and stretches somewhere between lowered and raised, whatever the cloth in them does. */
export interface StandingShape {
  /** 0 lowered, 1 raised. */
  raise: number;
  /** How far the bottom row has risen, mm. */
  liftMm: number;
  /** Rows from the hem up, where they are now. */
  rows: { number: number; yMm: number }[];
  /** From the bottom up. */
  folds: StandingFold[];
  hemYMm: number;
}

/** The shade somewhere between lowered and raised. */
export interface RaisedShape extends Omit<StandingShape, "folds"> {
  /** From the bottom up. */
  folds: FoldState[];
  /** Lowest point of all, mm below the top line. */
  bottomYMm: number;
  /** Furthest that cloth stands out from its own plane, mm. */
  outMm: number;
  /** Folds hang as their cloth bends (`hungShape`); otherwise they are drawn as limp cloth. */
  hung?: true;
  /** (out, down) of the hem, where the folds in front of it press it back. */
  hemEnd?: ShadePoint;
}

const FREE_REACH_SHARE = 0.2;
const FREE_REACH_MOST_MM = 48;
/** Depth that each gathered fold adds, mm, where nothing is known of the cloth; and the least that can be drawn. */
const USUAL_FOLD_DEPTH_MM = 8;
const LEAST_FOLD_DEPTH_MM = 7.5;
const SAME_MM = 1e-6;

/**
 * How the shade stands with its bottom row lifted by a share of the whole travel. Spacings are gathered
 * whole from the bottom up, one is on its way, the rest hangs flat. Each gathered fold lies in front of those
 * below it and adds its own depth to the stack.
 */
export function standingShape(
  grid: Grid,
  clothOf: readonly Stretch[],
  raise: number,
  foldDepthMm = USUAL_FOLD_DEPTH_MM,
): StandingShape {
  const depthMm = Math.max(LEAST_FOLD_DEPTH_MM, foldDepthMm);
  const share = Math.min(Math.max(raise, 0), 1);
  const liftMm = share * grid.travelMm;
  const rows = [...grid.rows].sort((a, b) => a.number - b.number);
  const stretches = stretchesOf(rows, clothOf, grid.travelMm);
  const folds: StandingFold[] = [];
  let slack = liftMm;
  const takes = stretches.map(({ cordMm }) => {
    const take = Math.min(cordMm, slack);
    slack -= take;
    return take;
  });
  // What hangs above a stretch has moved up by all that is gathered there.
  let above = 0;
  for (let i = stretches.length - 1; i >= 0; i -= 1) {
    const stretch = stretches[i];
    const take = takes[i];
    if (stretch === undefined || take === undefined) continue;
    const upperYMm = stretch.upperYMm - above;
    above += take;
    // Only what is gathered lies behind it: a soft fold that hangs open leaves room for the next.
    const behind = takes
      .slice(0, i)
      .filter((below, j) => (stretches[j]?.cordMm ?? 0) - below < SAME_MM).length;
    folds.unshift(standingFold(stretch, upperYMm, take, behind * depthMm, depthMm));
  }
  const rowsNow = rows.map(({ number, yMm }, i) => ({ number, yMm: folds[i]?.lowerYMm ?? yMm - liftMm }));
  const hemYMm = (rowsNow[0]?.yMm ?? grid.topSectionMm) + grid.bottomSectionMm;
  return { raise: share, liftMm, rows: rowsNow, folds, hemYMm };
}

/** The same with all of its folds as limp cloth. */
export function limpShape({ folds: standing, ...shape }: StandingShape): RaisedShape {
  const folds = standing.map(limpFoldState);
  return {
    ...shape,
    folds,
    bottomYMm: Math.max(shape.hemYMm, ...folds.map((fold) => fold.bottomYMm)),
    outMm: Math.max(0, ...folds.map((fold) => fold.outMm)),
  };
}

/** How the shade stands, of limp cloth. */
export function raisedShape(...standing: Parameters<typeof standingShape>): RaisedShape {
  return limpShape(standingShape(...standing));
}

interface Gathering {
  row: number;
  upperYMm: number;
  /** What can be gathered along the cord, and the cloth there. */
  cordMm: number;
  clothMm: number;
}

/** What can be gathered, from the bottom up: between rows, and what the top row rises by. */
function stretchesOf(rows: readonly Row[], clothOf: readonly Stretch[], travelMm: number): Gathering[] {
  const between = (rows[0]?.yMm ?? 0) - (rows.at(-1)?.yMm ?? 0);
  const slackOf = new Map(
    clothOf.map(({ row, cordMm, clothMm, sewnMm = 0 }) => [row, Math.max(0, clothMm - sewnMm - cordMm)]),
  );
  return rows.map((row, i) => {
    const next = rows[i + 1];
    const cordMm = next === undefined ? Math.max(0, travelMm - between) : row.yMm - next.yMm;
    return {
      row: row.number,
      upperYMm: row.yMm - cordMm,
      cordMm,
      clothMm: cordMm + (slackOf.get(row.number) ?? 0),
    };
  });
}

/** A loop that hangs free stands out by about a share of its cloth, but never further than the limit. */
export function freeReachMm(arcMm: number): number {
  return Math.min(FREE_REACH_SHARE * arcMm, FREE_REACH_MOST_MM);
}

/** A fold that hangs free at a fixed gap, whatever the height: cloth longer than the tape behind it. */
export function hangingFold(fold: {
  row: number;
  upperYMm: number;
  gapMm: number;
  clothMm: number;
  depthMm?: number;
}): FoldState {
  const { row, upperYMm, gapMm, clothMm, depthMm = USUAL_FOLD_DEPTH_MM } = fold;
  const stretch: Gathering = { row, upperYMm, cordMm: gapMm, clothMm };
  return limpFoldState(standingFold(stretch, upperYMm, 0, 0, Math.max(LEAST_FOLD_DEPTH_MM, depthMm)));
}

function standingFold(
  { row, cordMm, clothMm: arcMm }: Gathering,
  upperYMm: number,
  takeMm: number,
  behindMm: number,
  depthMm: number,
): StandingFold {
  const gapMm = cordMm - takeMm;
  const gathered = gapMm < SAME_MM ? "gathered" : "partial";
  return {
    ...{ row, upperYMm, lowerYMm: upperYMm + gapMm, arcMm, behindMm, depthMm },
    state: arcMm - gapMm < SAME_MM ? "flat" : gathered,
  };
}

/** The outline of one fold where its cloth has no stiffness. */
export function limpFoldState({ behindMm, depthMm, ...ends }: StandingFold): FoldState {
  const { upperYMm, lowerYMm, arcMm } = ends;
  const gapMm = lowerYMm - upperYMm;
  const at = (points: ShadePoint[]): ShadePoint[] => points.map(([out, down]) => [out, upperYMm + down]);
  if (ends.state === "flat") {
    const outline: ShadePoint[] = [
      [0, upperYMm],
      [0, lowerYMm],
    ];
    return { ...ends, outline, bottomYMm: lowerYMm, outMm: 0 };
  }
  const innerMm = behindMm + 0.35 * depthMm;
  const stacked = behindMm + depthMm;
  // A fold on its way swings freely out past those below it and lies down on them as it closes.
  const closed = 1 - gapMm / arcMm;
  const outerMm = stacked + freeReachMm(arcMm) * (1 - closed);
  // Wide open it bulges evenly; half closed it hangs as a drop.
  const roundness = Math.min(1, Math.max(0, 1.4 - 1.6 * closed));
  const outline = at(
    foldOutline(arcMm, gapMm, { outerMm, innerMm: innerMm + (outerMm - stacked) * roundness }),
  );
  return {
    ...ends,
    outline,
    bottomYMm: Math.max(...outline.map(([, y]) => y)),
    outMm: Math.max(...outline.map(([out]) => out)),
  };
}
