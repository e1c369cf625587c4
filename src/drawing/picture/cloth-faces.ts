import type { HangingCloth } from "../../drape/index.ts";
import type { Facet, Point } from "../model.ts";
import { type Camera, type PicturePoint, type SeenPoint, seenBy, towardsEye } from "./camera.ts";
import { addTriangle, type DepthMap, emptyDepthMap, nearestAt, type SeenPoints } from "./depth-map.ts";
import { KEY, keyCamera, lightOn } from "./light.ts";
import type { ClothPrint } from "./print/cloth-print.ts";
import { printOnFace } from "./print/print-on-face.ts";
import type { SeenFace } from "./seen-face.ts";
import { shadedParts, wholeFace } from "./shaded-parts.ts";

/** Colours of the two sides of a cloth in full light, `#rrggbb`. */
export interface ClothColours {
  face: string;
  back: string;
  /** On the face: its pattern, and what is sewn onto it. */
  print?: ClothPrint;
}

/** Spots of the maps that tell what hides what, mm. */
const SPOT_MM = 4;
/** A face is hidden where something lies nearer than this before it, mm. */
const HIDES_MM = 5;
/** And shaded from the key light by what lies nearer to it than this, mm: more where that falls along the cloth. */
const SHADES_MM = 5;
const SHADES_ALONG_MM = 9;
const MOST_SHADES_MM = 30;

/** The faces between the lines of a cloth, by their place: nodes, and what is worked out of each once. */
interface Quads {
  /** Four nodes of each, wound about it. */
  nodes: Int32Array;
  middle: Float64Array;
  normal: Float64Array;
  strand: Int32Array;
}

/** A cloth before a camera: which of its faces are seen, from behind to the front, strand before strand. */
export interface SeenCloth {
  cloth: HangingCloth;
  camera: Camera;
  quads: Quads;
  /** Its nodes and the middles of its faces as they are seen. */
  seen: SeenPoints;
  middles: SeenPoints;
  depth: DepthMap;
  /** The faces that are seen. */
  order: readonly number[];
}

/** What is seen of a cloth: without light, which takes as long again. */
export function seenCloth(cloth: HangingCloth, camera: Camera): SeenCloth {
  const quads = quadsOf(cloth);
  const count = quads.strand.length;
  const see = seenBy(camera);
  const seen = allSeen(cloth.placesMm, see);
  const depth = mapOf(quads, seen);
  const middles = allSeen(quads.middle, see);
  const order: number[] = [];
  for (let q = 0; q < count; q++) if (isSeen(quads, q, seen, depth)) order.push(q);
  order.sort(
    (a, b) =>
      (quads.strand[b] as number) - (quads.strand[a] as number) ||
      (middles[3 * a + 2] as number) - (middles[3 * b + 2] as number),
  );
  return { cloth, camera, quads, seen, middles, depth, order };
}

/** The faces that are seen, lit. */
function litFaces({ cloth, camera, quads, seen, middles, depth, order }: SeenCloth): SeenFace[] {
  const fromKey = seenBy(keyCamera(camera.aim));
  const keyDepth = mapOf(quads, allSeen(cloth.placesMm, fromKey));
  const eye = towardsEye(camera);
  return order.map((q): SeenFace => {
    const normal = pointAt(quads.normal, q);
    const isFace = dotProduct(normal, eye) >= 0;
    const towards: PicturePoint = isFace ? normal : [-normal[0], -normal[1], -normal[2]];
    const lit = shareInKey(pointAt(quads.middle, q), towards, fromKey, keyDepth);
    return {
      nodes: [...quads.nodes.subarray(4 * q, 4 * q + 4)] as SeenFace["nodes"],
      corners: cornersOf(quads, q, seen),
      isFace,
      light: lightOn(towards, lit, openness(middles, q, depth)),
    };
  });
}

/** The faces that are seen, lit, in the colours of their cloth, each under what is printed on it. */
export function paintFaces(all: SeenCloth, { face, back, print }: ClothColours): Facet[] {
  const { cloth } = all;
  const see = seenBy(all.camera);
  const faces = litFaces(all);
  const shown = print?.isPatterned === true ? faces.map(wholeFace) : shadedParts(faces);
  return shown.flatMap(({ seen: { nodes, corners: own, isFace }, from, to, light }): Facet[] => {
    const at = ([s, t]: Point) =>
      see(placeOnFace(cloth, nodes, from[0] + s * (to[0] - from[0]), from[1] + t * (to[1] - from[1]))).at;
    const isWhole = from[0] === 0 && from[1] === 0 && to[0] === 1 && to[1] === 1;
    const outline = wound(isWhole ? [...own] : CORNERS.map(at));
    if (!isFace) return [{ points: outline, colour: back, light }];
    if (print === undefined) return [{ points: outline, colour: face, light }];
    const corners = CORNERS.map(([s, t]) =>
      placeOnCloth(cloth, nodes, s === 0 ? from[0] : to[0], t === 0 ? from[1] : to[1]),
    );
    return [
      { points: outline, colour: print.ground, light },
      ...printOnFace(print, corners as [Point, Point, Point, Point]).map(({ colour, shares }) => ({
        points: wound(shares.map(at)),
        colour,
        light,
      })),
    ];
  });
}

const CORNERS: readonly Point[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

function placeOnCloth({ clothMm }: HangingCloth, nodes: readonly number[], s: number, t: number): Point {
  const weights = [(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t];
  const of = (c: 0 | 1) =>
    nodes.reduce((sum, n, k) => sum + (weights[k] as number) * (clothMm[2 * n + c] as number), 0);
  return [of(0), of(1)];
}

/** Between the corners of a face, at shares of the way across it and down it. */
function placeOnFace(
  { placesMm }: HangingCloth,
  nodes: readonly number[],
  s: number,
  t: number,
): PicturePoint {
  const [a, b, c, d] = nodes as [number, number, number, number];
  const [p, q, r, u] = [(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t];
  const of = (k: number) =>
    p * (placesMm[3 * a + k] as number) +
    q * (placesMm[3 * b + k] as number) +
    r * (placesMm[3 * c + k] as number) +
    u * (placesMm[3 * d + k] as number);
  return [of(0), of(1), of(2)];
}

function quadsOf({ across, along, placesMm, strands }: HangingCloth): Quads {
  const most = Math.max(0, (across - 1) * (along - 1));
  const nodes = new Int32Array(4 * most);
  const middle = new Float64Array(3 * most);
  const normal = new Float64Array(3 * most);
  const strand = new Int32Array(most);
  let count = 0;
  for (let j = 0; j + 1 < along; j++) {
    for (let i = 0; i + 1 < across; i++) {
      const a = j * across + i;
      const [b, c, d] = [a + 1, a + across + 1, a + across];
      const part = (n: number, k: number) => placesMm[3 * n + k] as number;
      const [ux, uy, uz] = [part(c, 0) - part(a, 0), part(c, 1) - part(a, 1), part(c, 2) - part(a, 2)];
      const [vx, vy, vz] = [part(d, 0) - part(b, 0), part(d, 1) - part(b, 1), part(d, 2) - part(b, 2)];
      const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
      const length = Math.sqrt(x * x + y * y + z * z);
      // Cloth that is folded away behind a line, or has no length, is no face.
      if (length < 1e-9) continue;
      nodes[4 * count] = a;
      nodes[4 * count + 1] = b;
      nodes[4 * count + 2] = c;
      nodes[4 * count + 3] = d;
      for (let k = 0; k < 3; k++)
        middle[3 * count + k] = (part(a, k) + part(b, k) + part(c, k) + part(d, k)) / 4;
      normal[3 * count] = x / length;
      normal[3 * count + 1] = y / length;
      normal[3 * count + 2] = z / length;
      strand[count] = strands[j + 1] as number;
      count++;
    }
  }
  return {
    nodes: nodes.subarray(0, 4 * count),
    middle: middle.subarray(0, 3 * count),
    normal: normal.subarray(0, 3 * count),
    strand: strand.subarray(0, count),
  };
}

function allSeen(placesMm: Float64Array, see: (place: PicturePoint) => SeenPoint): SeenPoints {
  const seen = new Float64Array(placesMm.length);
  for (let at = 0; at < placesMm.length; at += 3) {
    const point = see([placesMm[at] as number, placesMm[at + 1] as number, placesMm[at + 2] as number]);
    seen[at] = point.at[0];
    seen[at + 1] = point.at[1];
    seen[at + 2] = point.nearMm;
  }
  return seen;
}

function mapOf({ nodes }: Quads, seen: SeenPoints): DepthMap {
  const map = emptyDepthMap(seen, SPOT_MM);
  for (let at = 0; at < nodes.length; at += 4) {
    const [a, b, c, d] = [nodes[at], nodes[at + 1], nodes[at + 2], nodes[at + 3]] as [
      number,
      number,
      number,
      number,
    ];
    addTriangle(map, seen, a, b, c);
    addTriangle(map, seen, a, c, d);
  }
  return map;
}

/** Some part of it lies before everything else. */
function isSeen({ nodes }: Quads, q: number, seen: SeenPoints, depth: DepthMap): boolean {
  const a = 3 * (nodes[4 * q] as number);
  const b = 3 * (nodes[4 * q + 1] as number);
  const c = 3 * (nodes[4 * q + 2] as number);
  const d = 3 * (nodes[4 * q + 3] as number);
  for (const u of SAMPLES) {
    for (const v of SAMPLES) {
      const [p, r, s, t] = [(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v];
      const blend = (k: number) =>
        p * (seen[a + k] as number) +
        r * (seen[b + k] as number) +
        s * (seen[c + k] as number) +
        t * (seen[d + k] as number);
      if (blend(2) > nearestAt(depth, blend(0), blend(1)) - HIDES_MM) return true;
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
    lit += nearestAt(map, at[0] + dx, at[1] + dy) <= nearMm + shades ? 1 : 0;
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
function openness(middles: SeenPoints, q: number, map: DepthMap): number {
  const [x, y, nearMm] = pointAt(middles, q);
  let closed = 0;
  for (const [dx, dy, radius] of LOOKS)
    closed += Math.min(1, Math.max(0, (nearestAt(map, x + dx, y + dy) - nearMm - 2) / radius));
  return 1 - closed / LOOKS.length;
}

const RADII = [10, 24, 50];
const TURNS = 8;
/** From a place to where it is looked round: across, down and how far, mm. */
const LOOKS = RADII.flatMap((radius) =>
  Array.from({ length: TURNS }, (_, k) => {
    const turn = (2 * Math.PI * k) / TURNS;
    return [radius * Math.cos(turn), radius * Math.sin(turn), radius] as const;
  }),
);

function cornersOf({ nodes }: Quads, q: number, seen: SeenPoints): Point[] {
  return [0, 1, 2, 3].map((corner) => {
    const n = nodes[4 * q + corner] as number;
    return [seen[3 * n] as number, seen[3 * n + 1] as number] as const;
  });
}

/** All faces wound one way, so that two that overlap in one path do not cancel. */
function wound(points: Point[]): Point[] {
  let area = 0;
  points.forEach(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length] as readonly [number, number];
    area += x * v - u * y;
  });
  return area < 0 ? points.reverse() : points;
}

function pointAt(list: Float64Array, n: number): PicturePoint {
  return [list[3 * n] as number, list[3 * n + 1] as number, list[3 * n + 2] as number];
}

function dotProduct(a: PicturePoint, b: PicturePoint): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
