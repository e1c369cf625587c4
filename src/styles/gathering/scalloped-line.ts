import type { ShadePoint, Swag } from "../../shade-plan/index.ts";
import { riseMm, scallopOfSag } from "../base/scallop.ts";

/** Points of one scallop: enough that its drawn line keeps within a hair of the catenary. */
const STEPS = 24;
const SAME_MM = 1e-9;

/** Draws a line across the whole shade with its corners at this height, its scallops as deep as this share of their sag. */
export type ScallopedLine = (cornersYMm: number, share?: number) => ShadePoint[];

/**
 * Lines that hang in scallops between the columns; the strips beside the outermost droop to the edges as far as they
 * are wide. `sagOf` says how far each scallop hangs, mm.
 */
export function scallopedLines(
  widthMm: number,
  swags: readonly Swag[],
  sagOf: (swag: Swag) => number,
): ScallopedLine {
  // Scallops are mostly alike: each is computed once for all lines.
  const known = new Map<string, readonly ShadePoint[]>();
  const pointsOf = (spanMm: number, sagMm: number) => {
    const key = `${spanMm.toFixed(6)} ${sagMm.toFixed(6)}`;
    const found = known.get(key) ?? scallopPoints(spanMm, sagMm);
    known.set(key, found);
    return found;
  };
  const first = swags[0];
  const last = swags.at(-1);
  const rightMm = widthMm - (last?.toMm ?? widthMm);
  return (cornersYMm, share = 1) => {
    const sag = (swag: Swag) => share * sagOf(swag);
    const points: ShadePoint[] = [[0, cornersYMm + edgeDropMm(first?.fromMm ?? 0, first, sag)]];
    for (const swag of swags) {
      const scallop = pointsOf(swag.toMm - swag.fromMm, sag(swag));
      scallop.forEach(([along, drop], i) => {
        append(points, [i === STEPS ? swag.toMm : swag.fromMm + along, cornersYMm + drop]);
      });
    }
    append(points, [widthMm, cornersYMm + edgeDropMm(rightMm, last, sag)]);
    return points;
  };
}

/** How far the cloth droops at an edge, beside a strip of this width. */
export function edgeDropMm(stripMm: number, swag: Swag | undefined, sagOf: (swag: Swag) => number): number {
  return swag === undefined ? 0 : Math.min(stripMm, sagOf(swag));
}

function append(points: ShadePoint[], point: ShadePoint): void {
  if (Math.abs((points.at(-1)?.[0] ?? 0) - point[0]) > SAME_MM) points.push(point);
}

/** Points of one scallop, [along it, below its corners]: close where it turns, and not too far apart where it falls. */
function scallopPoints(spanMm: number, sagMm: number): ShadePoint[] {
  const { parameterMm: k, sagMm: hangs, arcMm } = scallopOfSag(spanMm, sagMm);
  const endRad = k === undefined ? 0 : Math.atan(Math.sinh(spanMm / (2 * k)));
  return Array.from({ length: STEPS + 1 }, (_, i): ShadePoint => {
    if (i === 0 || i === STEPS) return [i === 0 ? 0 : spanMm, 0];
    const share = i / STEPS - 0.5;
    if (k === undefined) return [spanMm * (share + 0.5), 0];
    // From its lowest point x = k·arsinh(tan φ) where it slopes by φ, and x = k·arsinh(s/k) so far along the cloth.
    const byTurn = Math.asinh(Math.tan(2 * share * endRad));
    const x = (k * (byTurn + Math.asinh((share * arcMm) / k))) / 2;
    return [spanMm / 2 + x, Math.max(0, hangs - riseMm(k, x))];
  });
}
