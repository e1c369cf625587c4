import {
  CHILD_PULL,
  type Cord,
  cordStiffnessN,
  FOOTHOLD_NAMES,
  footholdsOf,
  frictionOf,
  highestFoothold,
  LIFT_TRAITS,
  STRETCH_AT_BREAK,
} from "../../job/index.ts";
import {
  alongHeadMm,
  exitBelowTopMm,
  type Form,
  type Grid,
  hangingCords,
  type Mass,
  type Size,
} from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches } from "../../units/index.ts";
import type { SafetyShade } from "../safety-reads.ts";
import type { CordGeometry, OperatingLoop, PullCords, RearCords, RearTop } from "./cord-geometry.ts";
import { fromTo, steady } from "./course.ts";
import { isOverEyes, type LiftCords, type LoopCords } from "./lift-cords.ts";
import { boardSpans, heldWhileGathering, leastShare, rearSpans } from "./rear-cords.ts";

/** The connector sits at most this far below lock or last eye, shade lowered, and goes down with the cords. */
const CONNECTOR_BELOW_LOCK = sourced(
  inches(3),
  "mm",
  cite("lock-instructions", "within 3 in of the headrail, shade lowered"),
);

/** What the stages before have worked out, as far as cords depend on it. */
export interface ShadeFacts {
  shade: SafetyShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
}

/** The cords of a shade at every height, for any kind of lift. */
export function cordGeometry(facts: ShadeFacts, lift: LiftCords): CordGeometry {
  const { shade, size, grid } = facts;
  const boardUndersideMm = shade.board.thicknessMm;
  const rear = rearCords(facts, lift, boardUndersideMm + axisMm(lift));
  const geometry: CordGeometry = {
    kind: lift.kind,
    blindHeightMm: size.finishedLengthMm,
    ...(size.topAboveFloorMm === undefined ? {} : { topAboveFloorMm: size.topAboveFloorMm }),
    ...footholdOf(shade),
    hemBelowTopMm: size.finishedLengthMm,
    travelMm: Math.max(0, grid.travelMm),
    ...(rear === undefined ? {} : { rear }),
    stretchPerN: stretchPerN(shade.cord),
    pulls: pullCords(facts, lift, boardUndersideMm),
    ...(lift.topRail === undefined ? {} : { railSpansMm: railSpans(size, lift.topRail) }),
  };
  switch (lift.kind) {
    case "tube-loop":
      return { ...geometry, loop: operatingLoop(lift, boardUndersideMm) };
    case "tube-wand":
      return lift.wandMm === undefined ? geometry : { ...geometry, wandMm: lift.wandMm };
    case "cord-lock":
    case "cleat":
    case "spring":
      return geometry;
    case "motor": {
      const { leadLooseMm, leadLowMm } = shade.making.lift;
      return {
        ...geometry,
        ...(leadLooseMm === undefined ? {} : { leadLooseMm }),
        ...(leadLowMm === undefined ? {} : { leadLowMm }),
      };
    }
  }
}

/** From the highest thing a child reaches highest; 0 where there is nothing to stand on. */
function footholdOf({ opening }: SafetyShade): Pick<CordGeometry, "footholdMm" | "footholdName"> {
  const footholds = footholdsOf(opening);
  if (footholds === undefined) return {};
  const highest = highestFoothold(footholds);
  if (highest === undefined) return { footholdMm: 0 };
  return { footholdMm: highest.heightMm, footholdName: FOOTHOLD_NAMES[highest.kind] };
}

/** A cord of which nothing is known is taken to stretch under a child’s pull as far as one does that breaks. */
function stretchPerN(cord: Cord): number {
  const stiffnessN = cordStiffnessN(cord);
  return stiffnessN === undefined ? STRETCH_AT_BREAK.value / CHILD_PULL.value : 1 / stiffnessN;
}

/** Every cord that hangs at the front for a hand to pull, by what it hangs from. */
function pullCords({ shade, size }: ShadeFacts, lift: LiftCords, boardMm: number): PullCords[] {
  const { cleatAboveFloorMm } = shade.making.lift;
  return hangingCords(lift).map((cords): PullCords => {
    const { raises, count, from, downMm, upMm } = cords;
    const joinedMm = Math.min(CONNECTOR_BELOW_LOCK.value, downMm);
    // How far a top is let down does not hang on the hem: its cords are taken as long as they ever are.
    const along = (loweredMm: number) =>
      raises === "shade" ? fromTo(loweredMm, loweredMm + upMm - downMm) : steady(loweredMm + upMm - downMm);
    return {
      raises,
      from,
      count,
      lengthMm: along(downMm),
      ...(count > 1 ? { joinedMm: along(joinedMm) } : {}),
      exitBelowTopMm: exitBelowTopMm(cords, size, boardMm),
      cleatAboveFloorMm,
    };
  });
}

export function operatingLoop(lift: LoopCords, undersideMm: number): OperatingLoop {
  return {
    dropMm: lift.loopDropMm,
    perimeterMm: lift.loopPerimeterMm ?? 2 * lift.loopDropMm,
    device: lift.loopDevice ?? (lift.breakaway ? "breakaway" : "tensioner"),
    exitBelowTopMm: lift.loopExitBelowTopMm ?? undersideMm,
  };
}

function rearCords({ shade, size, grid, form, mass }: ShadeFacts, lift: LiftCords, endBelowTopMm: number) {
  const dropMm = lift.topRail?.dropMm ?? 0;
  // Between board and rail the cords run bare, whatever encloses them on the cloth.
  const spans = rearSpans(grid, endBelowTopMm, form.stretches).map((span) =>
    span.top ? { ...span, cordMm: span.cordMm + dropMm } : span,
  );
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  if (spans.length === 0 || columnsMm.length === 0) return undefined;
  return {
    count: columnsMm.length,
    guide: dropMm > 0 ? "open" : (lift.rearCords ?? shade.rearCords),
    ...(shade.making.lift.rearRelease === "breakaway" ? ({ releases: true } as const) : {}),
    spans,
    endBelowTopMm,
    boardSpansMm: isOverEyes(lift)
      ? boardSpans(
          lift.eyes.map(({ xMm }) => alongHeadMm(size, 0, xMm)),
          alongHeadMm(size, 0, (lift.kind === "cleat" ? lift.turn : lift.seat).xMm),
        )
      : [],
    heldN: heldWhileGathering(size, grid, mass, spans),
    leastShare: leastShare(columnsMm, size.finishedWidthMm),
    friction: frictionOf(shade.eye).value,
    wrapBelowRad: 0,
    top: topOf(lift),
  } satisfies RearCords;
}

/** Its cords run along the board to a lock of their own, whatever raises the shade. */
function railSpans(size: Size, { eyes, seat }: NonNullable<LiftCords["topRail"]>): number[] {
  return boardSpans(
    eyes.map(({ xMm }) => alongHeadMm(size, 0, xMm)),
    alongHeadMm(size, 0, seat.xMm),
  );
}

function axisMm(lift: LiftCords): number {
  return isOverEyes(lift) ? 0 : (lift.tube?.axisMm ?? 0);
}

/** A spool under a spring lies above its column: its cord does not turn on the way. */
export function topOf(lift: Pick<LiftCords, "kind">): RearTop {
  return LIFT_TRAITS[lift.kind].poweredBy === "spring" ? { holds: false, wrapRad: 0 } : { holds: true };
}
