import { hangFromNothing, moveStrip } from "./hang-strip.ts";
import { type Plane, placesOf, planeForces, type StripProblem, type StripState } from "./strip.ts";

/**
 * A gathered fold: a strip whose two hinges have met, so that it hangs as a drop, pressed from both sides by planes through
 * the hinges as its neighbours press it. In units of the half arc and of the rigidity.
 */
export interface DropPress {
  /** Half the angle that the drop takes at its hinges. */
  halfAngleRad: number;
  /** What one plane pushes with, as a moment about the hinges. */
  moment: number;
  slope: Float64Array;
}

/** One strip, pressed more and more. */
export interface PressedDrops {
  weight: number;
  /** From hanging free, moment 0, to the tightest; at `DROP_SHARES` of the free angle. */
  presses: DropPress[];
  /** Every press was found; otherwise the list ends with the last one that was. */
  converged: boolean;
}

/** Intervals of a drop: angles come out within 0.2 % and moments within 8 % of a mesh three times as fine at λ = 128. */
export const DROP_NODES = 64;

/** Shares of its free angle at which a drop is pressed. */
export const DROP_SHARES = [1, 0.9, 0.78, 0.66, 0.54, 0.43, 0.33, 0.25, 0.18] as const;

export function pressDrops(weight: number, nodes = DROP_NODES): PressedDrops {
  let problem: StripProblem = { weight, gap: 0, planes: [] };
  const free = hangFromNothing(problem, nodes);
  if (free.kind === "notConverged") return { weight, presses: [], converged: false };
  let state = free.value;
  const freeRad = freeAngle(state);
  const presses: DropPress[] = [{ halfAngleRad: freeRad, moment: 0, slope: state.slope }];
  for (const share of DROP_SHARES.slice(1)) {
    const next: StripProblem = { weight, gap: 0, planes: wedge(share * freeRad) };
    const moved = moveStrip(problem, next, state);
    if (moved.kind === "notConverged") return { weight, presses, converged: false };
    [problem, state] = [next, moved.value];
    const { moment } = planeForces(problem, state, 1);
    presses.push({ halfAngleRad: share * freeRad, moment, slope: state.slope });
  }
  return { weight, presses, converged: true };
}

/** Two planes through the hinges, the strip between them. */
function wedge(halfAngleRad: number): Plane[] {
  return [
    { out: 0, down: 0, tiltRad: -halfAngleRad, facing: 1 },
    { out: 0, down: 0, tiltRad: halfAngleRad, facing: -1 },
  ];
}

function freeAngle({ slope }: StripState): number {
  const { x, y } = placesOf(slope);
  let most = 0;
  for (let i = 1; i + 1 < x.length; i++) most = Math.max(most, Math.atan2(x[i] as number, y[i] as number));
  return most;
}
