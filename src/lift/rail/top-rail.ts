import { figureRuleOf, type Worked } from "../../figures/index.ts";
import { STYLE_TRAITS } from "../../job/index.ts";
import { alongHeadMm, type Grid, type Lift, type TopRail } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { upToMark } from "../../units/index.ts";
import type { LiftInput } from "../lift-input.ts";
import { railLoads } from "./rail-course.ts";
import { type RailRig, railRig } from "./rail-rig.ts";

/** A stiff rail hangs straight between cords so far apart. */
const RAIL_BAY = sourced(900, "mm", cite("our-choice", "a stiff flat bar on edge"));

const RAIL_CORD = figureRuleOf<{ column: number }>()({
  id: ({ column }) => `rig.rail-cord-${column}-length`,
  label: ({ column }) => `Rail cord at column ${column}: length`,
  symbol: ({ column }) => `a${column}`,
  unit: "mm",
  formula: "abs(X − x) + v + t + k",
  inputs: {
    X: [
      "mm",
      "its lock, along the board from the left edge",
      "lift/*",
      "board/section",
      "figure:measure.*",
      "figure:shape.columns",
    ],
    x: ["mm", "column, along the board from the left edge", "columns/edgeInsetMm", "figure:shape.columns"],
    v: ["mm", "how far the rail is let down", "fold/topDropMm", "figure:shape.raised-height"],
    t: ["mm", "tail with the rail let down", "lift/tailMm", "figure:measure.finished-length"],
    k: ["mm", "knots and threading", "lift/knotsMm"],
  },
  cite: cite("geometry", "run, drop, tail and knots; the rail hangs at the board when it is up"),
  compute: ({ X, x, v, t, k }) => Math.abs(X - x) + v + t + k,
});

/** A rail, and what its judges need to know of the rig behind it. */
export interface PlannedRail {
  rail: TopRail;
  rig: RailRig;
}

/**
 * The upper edge of a shade that can be let down: a rail on cords of its own, over a lock of its own at the far end
 * of the board. Undefined where the shade hangs from the board.
 */
export function topRail(input: LiftInput, lift: Lift): Worked<PlannedRail | undefined> {
  const { shade, size, grid } = input;
  const dropMm = Math.min(
    shade.making.fold.topDropMm,
    Math.max(0, size.finishedLengthMm - grid.raisedHeightMm),
  );
  const railMm = Math.max(0, size.finishedWidthMm - shade.making.board.barShorterMm);
  if (dropMm <= 0 || railMm <= 0 || !STYLE_TRAITS[shade.style].takesTopRail) {
    return { values: undefined, workings: [] };
  }
  const { controlSide, knotsMm, tailMm = size.finishedLengthMm / 2 } = shade.making.lift;
  const side = controlSide === "left" ? "right" : "left";
  const rig = railRig(input, lift, railColumns(grid), side);
  const loads = railLoads(input, rig, railMm, dropMm);
  const fromLeft = (xMm: number) => alongHeadMm(size, 0, xMm);
  const lockMm = fromLeft(rig.seat.xMm);
  const lengths = rig.strands.map(({ column, xMm }) =>
    RAIL_CORD.figure({ X: lockMm, x: fromLeft(xMm), v: dropMm, t: tailMm, k: knotsMm }, { column }),
  );
  const cords = rig.strands.map(({ column, xMm, path }, i) => {
    const lengthMm = lengths[i]?.value ?? 0;
    const { loadN = 0, pullN = 0 } = loads.values.cords.get(column) ?? {};
    return {
      column,
      xMm,
      runMm: Math.abs(lockMm - fromLeft(xMm)),
      knotsMm,
      lengthMm,
      cutMm: upToMark(lengthMm, shade.units.ruler),
      loadN,
      pullN,
      path,
    };
  });
  const { lock, seat, eyes } = rig;
  const rail: TopRail = {
    dropMm,
    side,
    railMm,
    massKg: loads.values.massKg,
    lockId: lock.id,
    lockName: lock.name,
    housingLengthMm: lock.housingLengthMm,
    housingWidthMm: lock.housingWidthMm,
    housingHeightMm: lock.housingHeightMm,
    seat,
    eyes,
    eyeDiameterMm: shade.eye.outsideDiameterMm,
    cords,
    heldN: loads.values.heldN,
    pullN: loads.values.pullN,
    course: loads.values.course,
    tailDownMm: tailMm,
    tailUpMm: tailMm + dropMm,
    cordTotalMm: cords.reduce((sum, { cutMm }) => sum + cutMm, 0),
  };
  return { values: { rail, rig }, workings: [...lengths, ...loads.workings] };
}

/** The outer columns, and as many between as keep the rail straight. */
function railColumns({ columns }: Grid): Grid["columns"] {
  const [first] = columns;
  const last = columns.at(-1);
  if (first === undefined || last === undefined || columns.length < 2) return columns;
  const bays = Math.max(1, Math.ceil((last.xMm - first.xMm) / RAIL_BAY.value));
  const step = (columns.length - 1) / bays;
  // Taken from both ends alike, so that a shade worked on the left is the mirror image of one worked on the right.
  const at = (i: number): number[] =>
    2 * i === bays ? [Math.floor(i * step), Math.ceil(i * step)] : [Math.round(Math.min(i, bays - i) * step)];
  const chosen = new Set(
    Array.from({ length: bays + 1 }, (_, i) =>
      at(i).map((n) => (2 * i > bays ? columns.length - 1 - n : n)),
    ).flat(),
  );
  return columns.filter((_, i) => chosen.has(i));
}
