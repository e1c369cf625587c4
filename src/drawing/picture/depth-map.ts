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

/** Points as they are seen, three numbers each: x and y on the picture, and how near they are, mm. */
export type SeenPoints = Float64Array;

/** A map without surfaces, large enough for these points. */
export function emptyDepthMap(points: SeenPoints, leastSpotMm: number): DepthMap {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let at = 0; at < points.length; at += 3) {
    const [x, y] = [points[at] as number, points[at + 1] as number];
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  const spotMm = Math.max(leastSpotMm, Math.sqrt(((right - left) * (bottom - top)) / MOST_SPOTS) || 0);
  const columns = Math.max(1, Math.ceil((right - left) / spotMm) + 1);
  const rows = Math.max(1, Math.ceil((bottom - top) / spotMm) + 1);
  return { left, top, spotMm, columns, rows, nearMm: new Float64Array(columns * rows).fill(-Infinity) };
}

/** Puts the triangle of three points on the map. */
export function addTriangle(map: DepthMap, points: SeenPoints, a: number, b: number, c: number): void {
  const { left, top, spotMm, columns, nearMm } = map;
  const ax = ((points[3 * a] as number) - left) / spotMm;
  const ay = ((points[3 * a + 1] as number) - top) / spotMm;
  const bx = ((points[3 * b] as number) - left) / spotMm;
  const by = ((points[3 * b + 1] as number) - top) / spotMm;
  const cx = ((points[3 * c] as number) - left) / spotMm;
  const cy = ((points[3 * c + 1] as number) - top) / spotMm;
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (Math.abs(area) < 1e-9) return;
  const nearA = points[3 * a + 2] as number;
  const nearB = points[3 * b + 2] as number;
  const nearC = points[3 * c + 2] as number;
  const inverse = 1 / area;
  const toRow = Math.min(map.rows - 1, Math.floor(Math.max(ay, by, cy)));
  for (let row = Math.max(0, Math.ceil(Math.min(ay, by, cy))); row <= toRow; row++) {
    const [a2, b2, c2] = [ay - row, by - row, cy - row];
    // Only where the triangle is on this row: the box around a long slanting one is nearly empty.
    const [l1, l2, l3] = [crossing(ax, a2, bx, b2), crossing(bx, b2, cx, c2), crossing(cx, c2, ax, a2)];
    const fromColumn = Math.max(0, Math.floor(Math.min(l1.low, l2.low, l3.low)));
    const toColumn = Math.min(columns - 1, Math.ceil(Math.max(l1.high, l2.high, l3.high)));
    for (let column = fromColumn; column <= toColumn; column++) {
      const u = ((bx - column) * c2 - (cx - column) * b2) * inverse;
      const v = ((cx - column) * a2 - (ax - column) * c2) * inverse;
      const w = 1 - u - v;
      if (u < -1e-9 || v < -1e-9 || w < -1e-9) continue;
      const near = u * nearA + v * nearB + w * nearC;
      const at = row * columns + column;
      if (near > (nearMm[at] as number)) nearMm[at] = near;
    }
  }
}

const NOWHERE = { low: Infinity, high: -Infinity };

/** Where an edge meets a row, its ends given across and down from that row; all of it where it lies in the row. */
function crossing(px: number, p2: number, qx: number, q2: number): { low: number; high: number } {
  if (p2 === q2) return p2 === 0 ? { low: Math.min(px, qx), high: Math.max(px, qx) } : NOWHERE;
  const share = p2 / (p2 - q2);
  if (share < 0 || share > 1) return NOWHERE;
  const x = px + share * (qx - px);
  return { low: x, high: x };
}

/** How near the nearest surface is at a spot of the picture, mm towards the eye; −∞ where there is none. */
export function nearestAt(map: DepthMap, x: number, y: number): number {
  const column = Math.round((x - map.left) / map.spotMm);
  const row = Math.round((y - map.top) / map.spotMm);
  if (column < 0 || row < 0 || column >= map.columns || row >= map.rows) return -Infinity;
  return map.nearMm[row * map.columns + column] as number;
}
