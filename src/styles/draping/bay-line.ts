import type { ShadePoint, Swag } from "../../shade/index.ts";
import { scallopOfSag } from "../gathering/scallop.ts";

/** Points of one bay: enough that its drawn line keeps within a hair of the catenary. */
const STEPS = 20;

/** The line through all bays from the first column to the last, its corners at one height. */
export function bayLine(cornersYMm: number, bays: readonly Swag[]): ShadePoint[] {
  const [first] = bays;
  if (first === undefined) return [];
  const start: ShadePoint = [first.fromMm, cornersYMm];
  return [start, ...bays.flatMap((bay) => bayPoints(cornersYMm, bay))];
}

/** The points of one bay after its left corner. */
function bayPoints(cornersYMm: number, { fromMm, toMm, sagMm }: Swag): ShadePoint[] {
  const right: ShadePoint = [toMm, cornersYMm];
  const spanMm = toMm - fromMm;
  const { parameterMm: k, sagMm: hangs } = scallopOfSag(spanMm, sagMm);
  if (k === undefined) return [right];
  const inner = Array.from({ length: STEPS - 1 }, (_, i): ShadePoint => {
    const share = (i + 1) / STEPS;
    const fromMiddle = spanMm * (share - 0.5);
    // cosh(x/k) − 1 = 2 sinh²(x/2k), which keeps the digits of a shallow curve.
    const rise = 2 * k * Math.sinh(fromMiddle / (2 * k)) ** 2;
    return [fromMm + share * spanMm, cornersYMm + Math.max(0, hangs - rise)];
  });
  return [...inner, right];
}
