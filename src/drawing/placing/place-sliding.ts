import type { Marker, Point } from "../model.ts";
import type { PlacedItem } from "../placed.ts";
import type { Box } from "./box.ts";
import { leaderTo, placeMarker } from "./place-marker.ts";
import { type Scaling, toPaper } from "./scaling.ts";
import type { TakenSpots } from "./text-box.ts";

/** From one place that is tried to the next, in diameters of the tag. */
const STEP = 0.5;
/** How far beside its line a tag may stand, tied to it, in diameters. */
const FARTHEST = 8;

/**
 * A tag that numbers a line: where it is wanted, else the first place along the line that is clear of words and other
 * tags, else beside the line and tied to it.
 */
export function placeSliding(marker: Marker, scaling: Scaling, taken: TakenSpots): PlacedItem[] {
  const wanted = toPaper(marker.at, scaling, marker.shiftPaperMm);
  const sizeMm = marker.paperMm * scaling.textScale;
  const line = (marker.along ?? []).map((point) => toPaper(point, scaling));
  const isFree = ([x, y]: Point) => taken.isFree(boxAround(x, y, sizeMm / 2));
  const onLine = [wanted, ...placesOn(line, wanted, sizeMm * STEP)].find(isFree);
  if (onLine !== undefined) return placeMarker(marker, scaling, taken, onLine);
  const beside = placesAround(wanted, sizeMm).find(isFree);
  if (beside === undefined) return placeMarker(marker, scaling, taken, wanted);
  return [
    leaderTo(marker, toPaper(marker.at, scaling), beside),
    ...placeMarker(marker, scaling, taken, beside),
  ];
}

function boxAround(x: number, y: number, radius: number): Box {
  return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
}

/** Places from one end of a line to the other, the end nearer to `from` first. */
function placesOn(line: readonly Point[], from: Point, step: number): Point[] {
  const [a, b] = line;
  if (a === undefined || b === undefined) return [];
  const away = ([x, y]: Point) => Math.hypot(x - from[0], y - from[1]);
  const [start, end] = away(a) <= away(b) ? [a, b] : [b, a];
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  return Array.from({ length: Math.floor(length / step) + 1 }, (_, i): Point => {
    const share = length === 0 ? 0 : (i * step) / length;
    return [start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])];
  });
}

/** Places round a point, the nearest first. */
function placesAround([x, y]: Point, sizeMm: number): Point[] {
  const places: Point[] = [];
  for (let far = 1; far <= FARTHEST; far += STEP)
    for (let turn = 0; turn < 8; turn += 1) {
      const angle = (turn * Math.PI) / 4;
      places.push([x + far * sizeMm * Math.cos(angle), y + far * sizeMm * Math.sin(angle)]);
    }
  return places;
}
