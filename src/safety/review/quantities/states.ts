import type { CordGeometry } from "../cord-geometry.ts";
import type { Course } from "../course.ts";

/** Both ends of the travel and every raise at which a fold begins to gather: there the one before it has ended. */
export function gatherStates({ rear, travelMm }: CordGeometry): number[] {
  const states = [0, 1];
  if (rear === undefined || travelMm <= 0) return states;
  for (const { startsMm } of rear.spans) {
    pushInside(states, startsMm / travelMm);
  }
  const last = rear.spans.at(-1);
  if (last !== undefined) pushInside(states, (last.startsMm + last.gathersMm) / travelMm);
  return states;
}

/** Knots of a course and both ends, each a raise from 0 (lowered) to 1. */
export function courseStates(course: Course): number[] {
  const states = [0, 1];
  for (const knot of course.raise) pushInside(states, knot);
  return states;
}

export function pushInside(states: number[], raise: number): void {
  if (raise > 0 && raise < 1) states.push(raise);
}
