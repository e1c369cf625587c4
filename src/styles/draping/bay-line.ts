import type { ShadePoint, Swag } from "../../shade-plan/index.ts";
import { riseMm, scallopOfSag } from "../base/scallop.ts";

/** Points of one bay: enough that its drawn line keeps within a hair of the catenary; fewer where there are many bays. */
const STEPS = 20;
const LEAST_STEPS = 6;
const MOST_POINTS = 320;

/** The line through all bays from the first column to the last, its corners at one height. */
export function bayLine(cornersYMm: number, bays: readonly Swag[]): ShadePoint[] {
  const [first] = bays;
  if (first === undefined) return [];
  // Bays are mostly alike: each kind is computed once.
  const known = new Map<string, readonly number[]>();
  const steps = 2 * Math.floor(Math.max(LEAST_STEPS, Math.min(STEPS, MOST_POINTS / bays.length)) / 2);
  const points: ShadePoint[] = [[first.fromMm, cornersYMm]];
  for (const { fromMm, toMm, sagMm } of bays) {
    const key = `${(toMm - fromMm).toFixed(6)} ${sagMm.toFixed(6)}`;
    const drops = known.get(key) ?? dropsOf(toMm - fromMm, sagMm, steps);
    known.set(key, drops);
    drops.forEach((drop, i) => {
      points.push([fromMm + ((toMm - fromMm) * (i + 1)) / (drops.length + 1), cornersYMm + drop]);
    });
    points.push([toMm, cornersYMm]);
  }
  return points;
}

/** How far the points between its corners hang below them; none where it lies straight. */
function dropsOf(spanMm: number, sagMm: number, steps: number): number[] {
  const { parameterMm: k, sagMm: hangs } = scallopOfSag(spanMm, sagMm);
  if (k === undefined) return [];
  return Array.from({ length: steps - 1 }, (_, i) =>
    Math.max(0, hangs - riseMm(k, spanMm * ((i + 1) / steps - 0.5))),
  );
}
