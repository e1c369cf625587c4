import { figureRule } from "../../../figures/index.ts";
import { cite } from "../../../sources/index.ts";
import type { CordGeometry, RearSpan } from "../cord-geometry.ts";
import { spanCordMm } from "../feed.ts";
import { leadMm } from "./lead.ts";
import { joinedLoopAt, joinedStates } from "./pull-cords.ts";
import type { Sweep } from "./quantity.ts";
import { leansOnHeld, loopPerimeter } from "./rear-cords.ts";
import { gatherStates, pushInside } from "./states.ts";

/** Cloth over diameter of the largest probe: reached where the cord is as long as the probe is wide. */
const CLOTH_PER_DIAMETER = 1 + Math.PI / 2;
const NEWTON_STEPS = 12;

/**
 * Diameter of the largest round probe that goes between a taut cord of `cordMm` and `clothMm` of cloth held
 * at both its ends, whatever the cloth's stiffness: the cloth leaves both guides straight, goes around the
 * probe, and the cord touches it,
 *
 *   c = g + 2 D atan(D / g).
 *
 * 0 where cord and cloth lie flat on each other and where the guides touch. It is largest for
 * g = D = c / (1 + π/2): with the fold partly gathered, neither lowered nor raised.
 */
export function openingMm(cordMm: number, clothMm: number): number {
  if (cordMm <= 0 || clothMm <= cordMm) return 0;
  // The left side is convex in D and rising, so Newton's steps from above never cross the root.
  let diameter = clothMm / CLOTH_PER_DIAMETER;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const angle = Math.atan2(diameter, cordMm);
    const excess = cordMm + 2 * diameter * angle - clothMm;
    const slope = 2 * angle + (2 * diameter * cordMm) / (cordMm * cordMm + diameter * diameter);
    const next = diameter - excess / slope;
    if (Math.abs(next - diameter) < 1e-9) return next;
    diameter = next;
  }
  return diameter;
}

const WIDEST_OPENING = figureRule({
  id: "safety.head-opening",
  label: "Largest round opening between cord and cloth",
  symbol: "D",
  unit: "mm",
  formula: "c / (1 + pi / 2)",
  inputs: { c: ["mm", "cloth between two guides", "figure:shape.*", "figure:measure.finished-length"] },
  restsOn: ["lift/rearCords", "board/section"],
  cite: cite("geometry", "a round probe with the cord straight beside it and the cloth around it"),
  note: "reached where the cord between the guides is as long as the probe is wide",
  compute: ({ c }) => c / CLOTH_PER_DIAMETER,
});

/** Largest round opening in any loop: a loop of cord alone can be pulled round. */
export const headOpening: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: loopPerimeter.absent,
  states: openingStates,
  leansOn: leansOnHeld,
  at: (geometry, raise) => Math.max(frontOpeningMm(geometry, raise), rearOpeningMm(geometry, raise)),
  what: (geometry, raise) =>
    frontOpeningMm(geometry, raise) >= rearOpeningMm(geometry, raise)
      ? {
          text: "the largest round opening in a loop of cord",
          cords: loopPerimeter.what(geometry, raise, {}).cords,
        }
      : { text: "the largest round opening between cord and cloth of the fold on its way", cords: "back" },
  working: (geometry, raise) => {
    const span = widestSpan(geometry, raise);
    const diameter = rearOpeningMm(geometry, raise);
    if (span === undefined || frontOpeningMm(geometry, raise) >= diameter) return undefined;
    const atItsWidest = Math.abs(diameter - span.clothMm / CLOTH_PER_DIAMETER) < 1e-6;
    if (!atItsWidest) return undefined;
    return WIDEST_OPENING.figure({ c: span.clothMm });
  },
};

function openingStates(geometry: CordGeometry): number[] {
  const states = gatherStates(geometry);
  const { rear, travelMm } = geometry;
  states.push(...joinedStates(geometry));
  if (travelMm <= 0) return states;
  for (const { cordMm, clothMm, gathersMm, startsMm } of rear?.spans ?? []) {
    const takenMm = cordMm - clothMm / CLOTH_PER_DIAMETER;
    if (takenMm > 0 && takenMm < gathersMm) pushInside(states, (startsMm + takenMm) / travelMm);
  }
  return states;
}

function frontOpeningMm(geometry: CordGeometry, raise: number): number {
  const perimeterMm = geometry.loop?.perimeterMm ?? 0;
  return Math.max(2 * leadMm(geometry), joinedLoopAt(geometry, raise), perimeterMm) / Math.PI;
}

function rearOpeningMm(geometry: CordGeometry, raise: number): number {
  const span = widestSpan(geometry, raise);
  return span === undefined ? 0 : openingMm(spanCordMm(span, raise * geometry.travelMm), span.clothMm);
}

/** The span that opens widest; those that lie flat or are gathered whole are passed over at once. */
function widestSpan({ rear, travelMm }: CordGeometry, raise: number): RearSpan | undefined {
  if (rear === undefined || rear.guide === "enclosed") return undefined;
  let widest: RearSpan | undefined;
  let most = 0;
  for (const span of rear.spans) {
    const opening = openingMm(spanCordMm(span, raise * travelMm), span.clothMm);
    if (opening > most) {
      most = opening;
      widest = span;
    }
  }
  return widest;
}
