import type { HangingCloth } from "../../drape/index.ts";
import type { Facet } from "../model.ts";
import { type Camera, type PicturePoint, type SeenPoint, seenBy, towardsEye } from "./camera.ts";
import type { ClothPattern } from "./cloth-pattern.ts";
import { addFace, type DepthMap, emptyDepthMap, nearestAt } from "./depth-map.ts";
import { KEY, keyCamera, lightOn } from "./light.ts";

/** Colours of the two sides of a cloth in full light, `#rrggbb`. */
export interface ClothColours {
  face: string;
  back: string;
  /** On the face. */
  pattern?: ClothPattern;
}

/** Spots of the maps that tell what hides what, mm. */
const SPOT_MM = 4;
/** A face is hidden where something lies nearer than this before it, mm. */
const HIDES_MM = 5;
/** And shaded from the key light by what lies nearer to it than this, mm: more where that falls along the cloth. */
const SHADES_MM = 5;
const SHADES_ALONG_MM = 9;
const MOST_SHADES_MM = 30;

interface Quad {
  corners: PicturePoint[];
  seen: SeenPoint[];
  middle: PicturePoint;
  normal: PicturePoint;
  strand: number;
  nearMm: number;
  /** Its middle on the flat cloth, mm. */
  onCloth: readonly [x: number, y: number];
}

/** The faces of a cloth that are seen, lit, from behind to the front: strand before strand, and by depth in each. */
export function clothFaces(cloth: HangingCloth, camera: Camera, colours: ClothColours): Facet[] {
  const see = seenBy(camera);
  const quads = quadsOf(cloth, see);
  const depth = mapOf(quads.map(({ seen }) => seen));
  const fromKey = seenBy(keyCamera(camera.aim));
  const keyDepth = mapOf(quads.map(({ corners }) => corners.map(fromKey)));
  const eye = towardsEye(camera);
  return quads
    .filter((quad) => isSeen(quad, depth))
    .sort((a, b) => b.strand - a.strand || a.nearMm - b.nearMm)
    .map(({ seen, normal, middle, onCloth }): Facet => {
      const isFace = dotProduct(normal, eye) >= 0;
      const towards: PicturePoint = isFace ? normal : [-normal[0], -normal[1], -normal[2]];
      const lit = shareInKey(middle, towards, fromKey, keyDepth);
      const open = openness(see(middle), depth);
      return {
        points: wound(seen.map(({ at }) => at)),
        colour: isFace ? (colours.pattern?.colourAt(...onCloth) ?? colours.face) : colours.back,
        light: lightOn(towards, lit, open),
      };
    });
}

function quadsOf(
  { across, along, placesMm, clothMm, strands }: HangingCloth,
  see: (place: PicturePoint) => SeenPoint,
): Quad[] {
  const place = (i: number, j: number): PicturePoint => {
    const at = 3 * (j * across + i);
    return [placesMm[at] as number, placesMm[at + 1] as number, placesMm[at + 2] as number];
  };
  const onCloth = (i: number, j: number, c: number) => clothMm[2 * (j * across + i) + c] as number;
  const quads: Quad[] = [];
  for (let j = 0; j + 1 < along; j++) {
    for (let i = 0; i + 1 < across; i++) {
      const corners = [place(i, j), place(i + 1, j), place(i + 1, j + 1), place(i, j + 1)];
      const [a, b, c, d] = corners as [PicturePoint, PicturePoint, PicturePoint, PicturePoint];
      const normal = unit(cross(minus(c, a), minus(d, b)));
      if (normal === undefined) continue;
      const middle = mean(corners);
      quads.push({
        ...{ corners, middle, normal, strand: strands[j + 1] as number },
        seen: corners.map(see),
        nearMm: see(middle).nearMm,
        onCloth: [0, 1].map((c) => (onCloth(i, j, c) + onCloth(i + 1, j + 1, c)) / 2) as [number, number],
      });
    }
  }
  return quads;
}

function mapOf(faces: SeenPoint[][]): DepthMap {
  const map = emptyDepthMap(faces, SPOT_MM);
  for (const face of faces) addFace(map, face);
  return map;
}

/** Some part of it lies before everything else. */
function isSeen({ seen }: Quad, depth: DepthMap): boolean {
  const [a, b, c, d] = seen as [SeenPoint, SeenPoint, SeenPoint, SeenPoint];
  for (const u of SAMPLES) {
    for (const v of SAMPLES) {
      const weight = [(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v];
      const blend = (of: (point: SeenPoint) => number) =>
        of(a) * (weight[0] as number) +
        of(b) * (weight[1] as number) +
        of(c) * (weight[2] as number) +
        of(d) * (weight[3] as number);
      const near = blend((point) => point.nearMm);
      if (near > nearestAt(depth, [blend(({ at }) => at[0]), blend(({ at }) => at[1])]) - HIDES_MM)
        return true;
    }
  }
  return false;
}

const SAMPLES = [0.04, 0.5, 0.96];

/** How much of the key light reaches a place, by four looks round it. */
function shareInKey(
  middle: PicturePoint,
  normal: PicturePoint,
  fromKey: (place: PicturePoint) => SeenPoint,
  map: DepthMap,
): number {
  const facing = dotProduct(normal, KEY);
  if (facing <= 0) return 0;
  const shades = Math.min(
    MOST_SHADES_MM,
    SHADES_MM + (SHADES_ALONG_MM * Math.sqrt(1 - facing ** 2)) / facing,
  );
  // A step off the cloth, so that it does not shade itself.
  const { at, nearMm } = fromKey([middle[0] + normal[0], middle[1] + normal[1], middle[2] + normal[2]]);
  let lit = 0;
  for (const [dx, dy] of AROUND_SPOT)
    lit += nearestAt(map, [at[0] + dx, at[1] + dy]) <= nearMm + shades ? 1 : 0;
  return lit / AROUND_SPOT.length;
}

const AROUND_SPOT = [
  [-4, -4],
  [4, -4],
  [0, 0],
  [-4, 4],
  [4, 4],
] as const;

/** How open a place lies to the room: less between folds that stand out round it. */
function openness({ at, nearMm }: SeenPoint, map: DepthMap): number {
  let closed = 0;
  for (const radius of RADII) {
    for (let k = 0; k < TURNS; k++) {
      const turn = (2 * Math.PI * k) / TURNS;
      const near = nearestAt(map, [at[0] + radius * Math.cos(turn), at[1] + radius * Math.sin(turn)]);
      closed += Math.min(1, Math.max(0, (near - nearMm - 2) / radius));
    }
  }
  return 1 - closed / (RADII.length * TURNS);
}

const RADII = [10, 24, 50];
const TURNS = 8;

/** All faces wound one way, so that two that overlap in one path do not cancel. */
function wound(points: (readonly [number, number])[]): (readonly [number, number])[] {
  let area = 0;
  points.forEach(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length] as readonly [number, number];
    area += x * v - u * y;
  });
  return area < 0 ? [...points].reverse() : points;
}

function mean(places: readonly PicturePoint[]): PicturePoint {
  const sum = [0, 1, 2].map(
    (c) => places.reduce((total, place) => total + (place[c] as number), 0) / places.length,
  );
  return [sum[0] as number, sum[1] as number, sum[2] as number];
}

function minus(a: PicturePoint, b: PicturePoint): PicturePoint {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function cross(a: PicturePoint, b: PicturePoint): PicturePoint {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: PicturePoint): PicturePoint | undefined {
  const length = Math.hypot(...a);
  return length < 1e-9 ? undefined : [a[0] / length, a[1] / length, a[2] / length];
}

export function dotProduct(a: PicturePoint, b: PicturePoint): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
