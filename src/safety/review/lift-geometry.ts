import type { ResolvedShade } from "../../job/index.ts";
import type { Form, Grid, Mass, Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches } from "../../units/index.ts";
import type { CordGeometry, OperatingLoop, PullCords, RearCords, RearTop } from "./cord-geometry.ts";
import { atLeast, fromTo } from "./course.ts";
import type { CordLockCords, LiftCords, LoopCords } from "./lift-cords.ts";
import { boardSpans, heldWhileGathering, leastShare, rearSpans } from "./rear-cords.ts";

/** The connector sits at most this far below the lock, shade lowered, and goes down with the cords. */
const CONNECTOR_BELOW_LOCK = sourced(
  inches(3),
  "mm",
  cite("lock-instructions", "within 3 in of the headrail, shade lowered"),
);
/** Cord on a ring or an eye, where its friction was not given. */
const CORD_FRICTION = sourced(0.25, "ratio", cite("roping-physics", "0.24 on a 12 mm bar, rounded up"));

/** What the stages before have worked out, as far as cords depend on it. */
export interface ShadeFacts {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
}

/** The cords of a shade at every height, for any kind of lift. */
export function cordGeometry(shade: ShadeFacts, lift: LiftCords): CordGeometry {
  const { resolved, size, grid } = shade;
  const boardUndersideMm = resolved.board.thicknessMm;
  const rear = rearCords(shade, lift, boardUndersideMm + axisMm(lift));
  const pull = hangingCords(shade, lift, boardUndersideMm);
  const geometry: CordGeometry = {
    kind: lift.kind,
    blindHeightMm: size.finishedLengthMm,
    ...(size.topAboveFloorMm === undefined ? {} : { topAboveFloorMm: size.topAboveFloorMm }),
    hemBelowTopMm: size.finishedLengthMm,
    travelMm: Math.max(0, grid.travelMm),
    ...(rear === undefined ? {} : { rear }),
    ...(pull === undefined ? {} : { pull }),
  };
  switch (lift.kind) {
    case "tube-loop":
      return { ...geometry, loop: operatingLoop(lift, boardUndersideMm) };
    case "tube-wand":
      return lift.wandMm === undefined ? geometry : { ...geometry, wandMm: lift.wandMm };
    default:
      return geometry;
  }
}

/** Every cord that hangs at the front for a hand to pull. */
function hangingCords(shade: ShadeFacts, lift: LiftCords, undersideMm: number): PullCords | undefined {
  const pull = lift.kind === "cord-lock" ? pullCords(shade, lift, undersideMm) : undefined;
  return withRailCords(shade, lift, pull, undersideMm);
}

/** Cords of a top rail hang at the front too: the longer they are the higher the rail, whatever the hem does. */
function withRailCords(
  { resolved }: ShadeFacts,
  { topRail }: LiftCords,
  pull: PullCords | undefined,
  undersideMm: number,
): PullCords | undefined {
  if (topRail === undefined) return pull;
  const { tailUpMm, cords } = topRail;
  return {
    count: Math.max(pull?.count ?? 0, cords.length),
    lengthMm: pull === undefined ? fromTo(tailUpMm, tailUpMm) : atLeast(pull.lengthMm, tailUpMm),
    ...(pull?.joinedMm === undefined ? {} : { joinedMm: pull.joinedMm }),
    exitBelowTopMm: pull?.exitBelowTopMm ?? undersideMm,
    cleatAboveFloorMm: resolved.making.lift.cleatAboveFloorMm,
  };
}

function pullCords(
  { resolved }: ShadeFacts,
  lift: CordLockCords,
  undersideMm: number,
): PullCords | undefined {
  const count = lift.cords.length;
  if (count === 0) return undefined;
  const { tailLoweredMm, tailRaisedMm } = lift;
  const joinedMm = Math.min(CONNECTOR_BELOW_LOCK.value, tailLoweredMm);
  return {
    count,
    lengthMm: fromTo(tailLoweredMm, tailRaisedMm),
    ...(count > 1 ? { joinedMm: fromTo(joinedMm, joinedMm + tailRaisedMm - tailLoweredMm) } : {}),
    exitBelowTopMm: undersideMm + lift.housingHeightMm,
    cleatAboveFloorMm: resolved.making.lift.cleatAboveFloorMm,
  };
}

export function operatingLoop(lift: LoopCords, undersideMm: number): OperatingLoop {
  return {
    dropMm: lift.loopDropMm,
    perimeterMm: lift.loopPerimeterMm ?? 2 * lift.loopDropMm,
    device: lift.loopDevice ?? "tensioner",
    exitBelowTopMm: lift.loopExitBelowTopMm ?? undersideMm,
  };
}

function rearCords({ resolved, size, grid, mass }: ShadeFacts, lift: LiftCords, endBelowTopMm: number) {
  const dropMm = lift.topRail?.dropMm ?? 0;
  // Between board and rail the cords run bare, whatever encloses them on the cloth.
  const spans = rearSpans(grid, endBelowTopMm).map((span) =>
    span.top ? { ...span, cordMm: span.cordMm + dropMm } : span,
  );
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  if (spans.length === 0 || columnsMm.length === 0) return undefined;
  return {
    count: columnsMm.length,
    guide: dropMm > 0 ? "open" : (lift.rearCords ?? resolved.rearCords),
    spans,
    endBelowTopMm,
    boardSpansMm:
      lift.kind === "cord-lock"
        ? boardSpans(
            lift.eyes.map(({ xMm }) => xMm),
            lift.seat.xMm,
          )
        : [],
    heldN: heldWhileGathering(size, grid, mass, spans),
    leastShare: leastShare(columnsMm, size.finishedWidthMm),
    friction: resolved.eye.friction ?? CORD_FRICTION.value,
    wrapBelowRad: 0,
    top: topOf(lift),
  } satisfies RearCords;
}

function axisMm(lift: LiftCords): number {
  return lift.kind === "cord-lock" ? 0 : (lift.tube?.axisMm ?? 0);
}

/** A spool under a spring lies above its column: its cord does not turn on the way. */
export function topOf(lift: Pick<LiftCords, "kind">): RearTop {
  return lift.kind === "spring" ? { holds: false, wrapRad: 0 } : { holds: true };
}
