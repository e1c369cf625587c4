import type { Worked } from "../../figures/index.ts";
import type {
  CordLockLift,
  CordRun,
  CourseHeight,
  LiftCourse,
  SpoolCord,
  TubeLift,
} from "../../shade-plan/index.ts";
import { MM_PER_M, SAME_LENGTH_MM } from "../../units/index.ts";
import type { LiftInput, LockInput, TubeInput } from "../lift-input.ts";
import type { Turns } from "../lock/rig-threading.ts";
import { gatherings, heldAtN } from "./gatherings.ts";
import { levelMm } from "./level.ts";
import { pulleysN, pullShares } from "./pull-shares.ts";

/** Just before a fold closes, as a share of it: there the weight of the stretch is still to come. */
const NEARLY = 1 - 1e-6;

type LockParts = Pick<CordLockLift, "cords" | "heldN" | "pullN"> & { turns: ReadonlyMap<number, Turns> };
/** What of a lift with a tube the forces follow from. */
type TubeCourseParts = Pick<TubeLift, "cords" | "woundLoweredMm" | "woundRaisedMm">;
type Forces = Pick<CourseHeight, "pullN" | "holdN" | "torqueNm">;

/** Forces of a shade over a cord lock at every height, and what makes up the pull where it is greatest. */
export function planLockCourse(input: LockInput, lift: LockParts): Worked<LiftCourse> {
  const loads = lift.cords.reduce((sum, { loadN }) => sum + loadN, 0);
  // Going up, friction multiplies the load of a cord; holding, it divides it by as much.
  const holds = lift.cords.reduce((sum, { loadN, pullN }) => sum + (pullN > 0 ? loadN ** 2 / pullN : 0), 0);
  const forces = (heldN: number): Forces => ({
    pullN: lift.heldN > 0 ? (heldN * lift.pullN) / lift.heldN : 0,
    holdN: loads > 0 ? (heldN * holds) / loads : 0,
  });
  const course = courseOf(input, lift.cords, forces);
  const withPulleys = pulleysN(input.shade.eye, lift.cords, lift.turns);
  return {
    values: {
      ...course.values,
      shares: pullShares(input.shade.eye, lift.cords, lift.turns),
      withPulleysN: withPulleys.value,
    },
    workings: [...course.workings, withPulleys],
  };
}

/** The same for cords on spools: torque on the tube, and what the hand adds to whatever turns it. */
export function planTubeCourse(
  input: TubeInput,
  parts: TubeCourseParts,
  forces: (torqueNm: number, radiusMm: number) => Pick<CourseHeight, "pullN" | "holdN">,
): Worked<LiftCourse> {
  return courseOf(input, parts.cords, (heldN, raise) => {
    const radiusMm = woundNow(parts, raise);
    const torqueNm = (heldN * radiusMm) / MM_PER_M;
    return { ...forces(torqueNm, radiusMm), torqueNm };
  });
}

/** Weight and forces where each fold begins and just before it closes; between them they run straight. */
function courseOf(
  { shade, grid, form, mass }: LiftInput,
  cords: readonly (CordRun | SpoolCord)[],
  forces: (heldN: number, raise: number) => Forces,
): Worked<LiftCourse> {
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
  const { values: level, workings } = levelMm(shade.cord, cords, heights);
  return { values: { heights, shares: [], ...(level === undefined ? {} : { levelMm: level }) }, workings };
}

/** Axis to cord, mm: its square grows evenly with the cord that is wound up. */
function woundNow({ woundLoweredMm, woundRaisedMm }: TubeCourseParts, raise: number): number {
  return Math.sqrt(woundLoweredMm ** 2 + raise * (woundRaisedMm ** 2 - woundLoweredMm ** 2));
}
