import type { Worked } from "../../figures/index.ts";
import { frictionOf } from "../../job/index.ts";
import { capstanRatio } from "../../mechanics/index.ts";
import type {
  CleatCord,
  CleatLift,
  CordLockLift,
  CordRun,
  CourseHeight,
  LiftCourse,
  PullShare,
  SpoolCord,
  TubeLift,
} from "../../shade-plan/index.ts";
import { MM_PER_M } from "../../units/index.ts";
import type { CleatInput, LiftInput, LockInput, TubeInput } from "../lift-input.ts";
import type { Turns } from "../lock/rig-threading.ts";
import { gatherings, heldAt, weightSteps } from "./gatherings.ts";
import { levelMm } from "./level.ts";
import { overEyes } from "./over-eyes.ts";
import { pulleysN, pullShares } from "./pull-shares.ts";

type LockParts = Pick<CordLockLift, "cords" | "heldN" | "pullN"> & { turns: ReadonlyMap<number, Turns> };
/** What of a lift with a tube the forces follow from. */
type TubeCourseParts = Pick<TubeLift, "cords" | "woundLoweredMm" | "woundRaisedMm">;
type Forces = Pick<CourseHeight, "pullN" | "holdN" | "torqueNm">;

/** Forces of a shade over a cord lock at every height, and what makes up the pull where it is greatest. */
export function planLockCourse(input: LockInput, lift: LockParts): Worked<LiftCourse> {
  const course = courseOf(input, lift.cords, overEyes(lift.cords, lift.heldN, lift.pullN));
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

/** The same over a last eye and down to a cleat: the hold is what the cleat bears. */
export function planCleatCourse(
  input: CleatInput,
  lift: Pick<CleatLift, "cords" | "heldN" | "pullN">,
): Worked<LiftCourse> {
  const course = courseOf(input, lift.cords, overEyes(lift.cords, lift.heldN, lift.pullN));
  return { values: { ...course.values, shares: cleatShares(input, lift.cords) }, workings: course.workings };
}

/** The weight, what each cord's own eye and those it passes ask for, and the turn over the last one. */
function cleatShares({ shade }: CleatInput, cords: readonly CleatCord[]): PullShare[] {
  const friction = frictionOf(shade.eye).value;
  const afterEyes = cords.map(({ loadN, eyesRad }) => loadN * capstanRatio(friction, eyesRad));
  const eyes = cords.flatMap(({ number, loadN, eyesRad }, i): PullShare[] =>
    eyesRad === 0 ? [] : [{ what: "own-eye", eye: number, addsN: (afterEyes[i] ?? 0) - loadN }],
  );
  return [
    { what: "weight", addsN: cords.reduce((sum, { loadN }) => sum + loadN, 0) },
    ...eyes,
    { what: "last-eye", addsN: cords.reduce((sum, { pullN }, i) => sum + pullN - (afterEyes[i] ?? 0), 0) },
  ];
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
  cords: readonly (CordRun | CleatCord | SpoolCord)[],
  forces: (heldN: number, raise: number) => Forces,
): Worked<LiftCourse> {
  const list = gatherings(grid, form);
  const heldAtN = heldAt(list, form, mass);
  const at = (liftMm: number): CourseHeight => {
    const heldN = heldAtN(liftMm);
    const raise = grid.travelMm > 0 ? Math.min(1, liftMm / grid.travelMm) : 0;
    return { liftMm, raise, heldN, ...forces(heldN, raise) };
  };
  const found = weightSteps(list).map(at);
  const heights = found.length === 0 ? [at(0)] : found;
  const { values: level, workings } = levelMm(shade.cord, cords, heights);
  return { values: { heights, shares: [], ...(level === undefined ? {} : { levelMm: level }) }, workings };
}

/** Axis to cord, mm: its square grows evenly with the cord that is wound up. */
function woundNow({ woundLoweredMm, woundRaisedMm }: TubeCourseParts, raise: number): number {
  return Math.sqrt(woundLoweredMm ** 2 + raise * (woundRaisedMm ** 2 - woundLoweredMm ** 2));
}
