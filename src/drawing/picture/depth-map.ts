import type { SeenPoint } from "./camera.ts";

/** The nearest surface behind each spot of a picture: a grid of spots of one size. */
export interface DepthMap {
  left: number;
  top: number;
  spotMm: number;
  columns: number;
  rows: number;
  nearMm: Float64Array;
}

/** More spots than this and each is larger. */
const MOST_SPOTS = 300_000;

export function emptyDepthMap(corners: readonly SeenPoint[][], leastSpotMm: number): DepthMap {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const face of corners) {
    for (const { at } of face) {
      left = Math.min(left, at[0]);
      right = Math.max(right, at[0]);
      top = Math.min(top, at[1]);
      bottom = Math.max(bottom, at[1]);
    }
  }
  const spotMm = Math.max(leastSpotMm, Math.sqrt(((right - left) * (bottom - top)) / MOST_SPOTS) || 0);
  const columns = Math.max(1, Math.ceil((right - left) / spotMm) + 1);
  const rows = Math.max(1, Math.ceil((bottom - top) / spotMm) + 1);
  return { left, top, spotMm, columns, rows, nearMm: new Float64Array(columns * rows).fill(-Infinity) };
}

/** Puts a face of four corners on the map, as two triangles. */
export function addFace(map: DepthMap, [a, b, c, d]: readonly SeenPoint[]): void {
  if (a === undefined || b === undefined || c === undefined) return;
  addTriangle(map, a, b, c);
  if (d !== undefined) addTriangle(map, a, c, d);
}

function addTriangle(map: DepthMap, a: SeenPoint, b: SeenPoint, c: SeenPoint): void {
  const spot = (x: number, from: number) => (x - from) / map.spotMm;
  const [ax, ay, bx, by, cx, cy] = [a, b, c].flatMap(({ at }) => [
    spot(at[0], map.left),
    spot(at[1], map.top),
  ]) as [number, number, number, number, number, number];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (Math.abs(area) < 1e-9) return;
  const toRow = Math.min(map.rows - 1, Math.floor(Math.max(ay, by, cy)));
  const toColumn = Math.min(map.columns - 1, Math.floor(Math.max(ax, bx, cx)));
  for (let row = Math.max(0, Math.ceil(Math.min(ay, by, cy))); row <= toRow; row++) {
    for (let column = Math.max(0, Math.ceil(Math.min(ax, bx, cx))); column <= toColumn; column++) {
      const u = ((bx - column) * (cy - row) - (cx - column) * (by - row)) / area;
      const v = ((cx - column) * (ay - row) - (ax - column) * (cy - row)) / area;
      const w = 1 - u - v;
      if (u < -1e-9 || v < -1e-9 || w < -1e-9) continue;
      const near = u * a.nearMm + v * b.nearMm + w * c.nearMm;
      const at = row * map.columns + column;
      if (near > (map.nearMm[at] as number)) map.nearMm[at] = near;
    }
  }
}

/** How near the nearest surface is at a spot; −∞ where there is none. */
export function nearestAt(map: DepthMap, [x, y]: readonly [number, number]): number {
  const column = Math.round((x - map.left) / map.spotMm);
  const row = Math.round((y - map.top) / map.spotMm);
  if (column < 0 || row < 0 || column >= map.columns || row >= map.rows) return -Infinity;
  return map.nearMm[row * map.columns + column] as number;
}
