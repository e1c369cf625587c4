import {
  fromBoardEndMm,
  type HeadShape,
  type Lift,
  type Mass,
  type MountedBoard,
} from "../shade-plan/index.ts";
import { GRAVITY } from "../units/index.ts";

/** A downward load at one place along the board, as if it began at its level place. */
interface PointLoad {
  what: "eye" | "spool" | "lock" | "last-eye" | "drive";
  atMm: number;
  loadN: number;
}

/** All that pulls the board down with the shade raised and a hand on the cords: a beam on its fixings. */
export interface BoardLoads {
  fromMm: number;
  toMm: number;
  /** Evenly from end to end: the board itself, and the cloth that its heading carries. */
  evenN: number;
  points: PointLoad[];
  supportsMm: number[];
}

/** The same with another pull at lock or drive, N. */
export function withHand(loads: BoardLoads, handN: number): BoardLoads {
  const points = loads.points.map((point) => (isHand(point) ? { ...point, loadN: handN } : point));
  return { ...loads, points };
}

/**
 * The same with somebody of this weight on the hem. Without a lock each cord is fast at both ends, so that it pulls down
 * at the last eye as well, by all that it carries: friction in the eyes, which would take some of it, is left out.
 */
export function withSomeoneOnHem(loads: BoardLoads, weightN: number): BoardLoads {
  const eyes = loads.points.filter(({ what }) => what === "eye");
  const heldN = eyes.reduce((sum, { loadN }) => sum + loadN, 0);
  const share = (loadN: number) => (heldN > 0 ? loadN / heldN : 1 / Math.max(1, eyes.length));
  const points = loads.points.map((point) => {
    if (point.what === "eye") return { ...point, loadN: point.loadN + weightN * share(point.loadN) };
    return isHand(point) ? { ...point, loadN: heldN + weightN } : point;
  });
  return { ...loads, points };
}

/** The cords are fast at both ends, on the bottom rings and on a cleat. */
export function endsOnCleat({ points }: BoardLoads): boolean {
  return points.some(({ what }) => what === "last-eye");
}

function isHand({ what }: PointLoad): boolean {
  return what === "lock" || what === "last-eye" || what === "drive";
}

/** The board with what hangs under it. */
export interface LoadedBoard {
  size: HeadShape;
  board: Pick<MountedBoard, "leftMm" | "lengthMm" | "brackets">;
  lift: Lift;
}

/** Which of two rigs the hand is at: the lift, shade raised; or the rail of a top that comes down, shade lowered. */
export type HandAt = "lift" | "rail";

/**
 * Each eye or spool carries its cord's share of the weight; lock, last eye or drive the pull of the hand. `boardKg` is the board
 * with the cloth that lies on it. On a slope all of a load is taken as pressing across the board, which is a little too
 * much. What the lift cords of a shade with a top rail do not carry hangs from the rail's eyes.
 */
export function boardLoads(
  loaded: LoadedBoard,
  boardKg: number,
  mass: Mass,
  handAt: HandAt = "lift",
): BoardLoads {
  const { board, lift } = loaded;
  const { topRail } = lift;
  const along = (xMm: number) => board.leftMm + fromBoardEndMm(loaded, xMm);
  const liftN = handAt === "lift" ? lift.heldN : 0;
  const headingN = topRail === undefined ? Math.max(0, mass.totalKg * GRAVITY - lift.heldN) : 0;
  const shared = (
    what: PointLoad["what"],
    cords: readonly { atMm: number; loadN: number }[],
    weightN: number,
  ): PointLoad[] => {
    const shares = cords.reduce((sum, { loadN }) => sum + loadN, 0) || 1;
    return cords.map(({ atMm, loadN }) => ({ what, atMm: along(atMm), loadN: (weightN * loadN) / shares }));
  };
  const liftCords = lift.cords.map(({ columnX, loadN }) => ({ atMm: columnX, loadN }));
  const railCords = topRail?.cords.map(({ xMm, loadN }) => ({ atMm: xMm, loadN })) ?? [];
  return {
    fromMm: board.leftMm,
    toMm: along(board.leftMm + board.lengthMm),
    evenN: boardKg * GRAVITY + headingN,
    points: [
      ...shared(lift.takeUp === "tube" ? "spool" : "eye", liftCords, liftN),
      ...shared("eye", railCords, Math.max(0, (topRail?.heldN ?? 0) - liftN)),
      topRail !== undefined && handAt === "rail"
        ? { what: "lock", atMm: along(topRail.seat.xMm), loadN: topRail.pullN }
        : {
            what: HAND_AT[lift.takeUp],
            atMm: along(handAtMm(lift)),
            loadN: lift.pullN,
          },
    ],
    supportsMm: board.brackets.map(({ xMm }) => along(xMm)),
  };
}

const HAND_AT = { lock: "lock", cleat: "last-eye", tube: "drive" } as const satisfies Record<
  Lift["takeUp"],
  PointLoad["what"]
>;

/** A hand at the hem pulls anywhere; the drive stands for the middle of its pull. */
function handAtMm(lift: Lift): number {
  switch (lift.takeUp) {
    case "lock":
      return lift.seat.xMm;
    case "cleat":
      return lift.turn.xMm;
    case "tube":
      return lift.drive.xMm;
  }
}

/**
 * Load on each fixing by the lever rule, N: every stretch between two of them taken as a plank of its own,
 * the overhangs as part of the outer ones. Between two fixings this is exact; over more it is the usual estimate.
 */
export function fixingLoads({ fromMm, toMm, evenN, points, supportsMm }: BoardLoads): number[] {
  const loads = supportsMm.map(() => 0);
  const put = (atMm: number, loadN: number) => {
    const after = supportsMm.findIndex((x) => x >= atMm);
    const right = Math.max(1, after < 0 ? supportsMm.length - 1 : after);
    const from = supportsMm[right - 1];
    const to = supportsMm[right];
    if (from === undefined || to === undefined) {
      loads[0] = (loads[0] ?? 0) + loadN;
      return;
    }
    const share = (atMm - from) / (to - from);
    loads[right - 1] = (loads[right - 1] ?? 0) + loadN * (1 - share);
    loads[right] = (loads[right] ?? 0) + loadN * share;
  };
  for (const { atMm, loadN } of points) put(atMm, loadN);
  // An even load acts through the middle of each stretch.
  const marks = [fromMm, ...supportsMm, toMm];
  for (let i = 1; i < marks.length; i++) {
    const from = marks[i - 1] ?? fromMm;
    const to = marks[i] ?? toMm;
    put((from + to) / 2, (evenN * (to - from)) / (toMm - fromMm));
  }
  return loads;
}
