import type { WorkingBook } from "../../figures/index.ts";
import type {
  CordLockLift,
  CordRun,
  CourseHeight,
  LiftCourse,
  SpoolCord,
  TubeLift,
} from "../../shade-plan/index.ts";
import { MM_PER_M, SAME_LENGTH_MM } from "../../units/index.ts";
import type { LiftInput } from "../lift-input.ts";
import type { TubeInput } from "../tube/tube-input.ts";
import { gatherings, heldAtN } from "./gatherings.ts";
import { levelMm } from "./level.ts";
import { pulleysN, pullShares } from "./pull-shares.ts";

/** Just before a fold closes, as a share of it: there the weight of the stretch is still to come. */
const NEARLY = 1 - 1e-6;

type LockParts = Pick<CordLockLift, "cords" | "heldN" | "pullN">;
/** What of a lift with a tube the forces follow from. */
export type TubeCourseParts = Pick<
  TubeLift,
  "kind" | "cords" | "pullN" | "woundLoweredMm" | "woundRaisedMm" | "torqueLoweredNm" | "torqueRaisedNm"
> & { bandN?: number };
type Forces = Pick<CourseHeight, "pullN" | "holdN" | "torqueNm">;

/** Forces of a shade over a cord lock at every height, and what makes up the pull where it is greatest. */
export function planLockCourse(input: LiftInput, lift: LockParts, book: WorkingBook): LiftCourse {
  const loads = lift.cords.reduce((sum, { loadN }) => sum + loadN, 0);
  // Going up, friction multiplies the load of a cord; holding, it divides it by as much.
  const holds = lift.cords.reduce((sum, { loadN, pullN }) => sum + (pullN > 0 ? loadN ** 2 / pullN : 0), 0);
  const forces = (heldN: number): Forces => ({
    pullN: lift.heldN > 0 ? (heldN * lift.pullN) / lift.heldN : 0,
    holdN: loads > 0 ? (heldN * holds) / loads : 0,
  });
  return {
    ...courseOf(input, lift.cords, forces, book),
    shares: pullShares(input, lift),
    withPulleysN: pulleysN(input, lift, book),
  };
}

/** The same for cords on spools: torque on the tube, and what the hand adds to spring, wand or loop. */
export function planTubeCourse(input: TubeInput, lift: TubeCourseParts, book: WorkingBook): LiftCourse {
  const worstNm = Math.max(lift.torqueLoweredNm, lift.torqueRaisedNm);
  const springNm = (lift.torqueLoweredNm + lift.torqueRaisedNm) / 2;
  const forces = (heldN: number, raise: number): Forces => {
    const radiusMm = woundNow(lift, raise);
    const torqueNm = (heldN * radiusMm) / MM_PER_M;
    switch (lift.kind) {
      case "motor":
        return { pullN: 0, holdN: 0, torqueNm };
      case "spring": {
        const offN = (MM_PER_M * (torqueNm - springNm)) / radiusMm;
        return { pullN: Math.max(0, offN + (lift.bandN ?? 0)), holdN: Math.abs(offN), torqueNm };
      }
      default:
        return { pullN: worstNm > 0 ? (lift.pullN * torqueNm) / worstNm : 0, holdN: 0, torqueNm };
    }
  };
  return courseOf(input, lift.cords, forces, book);
}

/** Weight and forces where each fold begins and just before it closes; between them they run straight. */
function courseOf(
  input: LiftInput | TubeInput,
  cords: readonly (CordRun | SpoolCord)[],
  forces: (heldN: number, raise: number) => Forces,
  book: WorkingBook,
): LiftCourse {
  const { grid, form, mass } = input;
  const list = gatherings(grid, form);
  const at = (liftMm: number): CourseHeight => {
    const heldN = heldAtN(list, form, mass, liftMm);
    const raise = grid.travelMm > 0 ? Math.min(1, liftMm / grid.travelMm) : 0;
    return { liftMm, raise, heldN, ...forces(heldN, raise) };
  };
  const found = list
    .filter(({ gathersMm }) => gathersMm > SAME_LENGTH_MM)
    .flatMap(({ startsMm, gathersMm }) => [at(startsMm), at(startsMm + gathersMm * NEARLY)]);
  const heights = found.length === 0 ? [at(0)] : found;
  const level = levelMm(input.resolved, cords, heights, book);
  return { heights, shares: [], ...(level === undefined ? {} : { levelMm: level }) };
}

/** Axis to cord, mm: its square grows evenly with the cord that is wound up. */
function woundNow({ woundLoweredMm, woundRaisedMm }: TubeCourseParts, raise: number): number {
  return Math.sqrt(woundLoweredMm ** 2 + raise * (woundRaisedMm ** 2 - woundLoweredMm ** 2));
}
