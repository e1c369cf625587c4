import type { Point } from "../../model.ts";
import type { ClothArea, ClothPrint } from "./cloth-print.ts";
import { cutByLine } from "./cut-by-line.ts";
import { areaOf } from "./outlines.ts";

/** Part of an area that lies on one face: shares of the way across it and down it. */
export interface PrintedPart {
  colour: string;
  shares: Point[];
}

/** What is printed on a face, told by the places of its corners on the cloth, mm, wound about it from its upper left. */
export function printOnFace(
  print: ClothPrint,
  corners: readonly [Point, Point, Point, Point],
): PrintedPart[] {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const box = {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
  if (box.right - box.left < LEAST_MM || box.bottom - box.top < LEAST_MM) return [];
  const shares = sharesOf(corners);
  const found: { colour: string; part: Point[] }[] = [];
  const wholeMm2 = WHOLE * areaOf(corners);
  for (const area of print.areasNear(box)) {
    for (const part of withinFace(area, corners)) {
      // What covers the face hides all that was printed before.
      if (areaOf(part) >= wholeMm2) found.length = 0;
      found.push({ colour: area.colour, part });
    }
  }
  return found.map(({ colour, part }) => ({ colour, shares: part.map(shares) }));
}

const WHOLE = 0.999;

/** Faces narrower than this show nothing, mm. */
const LEAST_MM = 0.05;
/** Parts smaller than this are not seen, mm². */
const LEAST_MM2 = 4;
/** Parts reach over the edge of their face, so that the ground of its neighbours does not show between them, mm. */
const OVER_MM = 2.5;

function withinFace({ points, box }: ClothArea, corners: readonly Point[]): Point[][] {
  let parts: Point[][] = [[...points]];
  corners.forEach(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % corners.length] as Point;
    const [dx, dy] = [bx - ax, by - ay];
    const over = OVER_MM * Math.sqrt(dx * dx + dy * dy);
    const side = ([x, y]: Point) => dx * (y - ay) - dy * (x - ax) + over;
    const isWhole =
      side([box.left, box.top]) >= 0 &&
      side([box.right, box.top]) >= 0 &&
      side([box.right, box.bottom]) >= 0 &&
      side([box.left, box.bottom]) >= 0;
    if (!isWhole) parts = parts.flatMap((part) => cutByLine(part, side));
  });
  return parts.filter((part) => areaOf(part) > LEAST_MM2);
}

const STEPS = 3;

/** The inverse of the bilinear map of a face, by Newton’s method: faces on the cloth are nearly rectangles. */
function sharesOf([a, b, c, d]: readonly [Point, Point, Point, Point]): (place: Point) => Point {
  const at = (s: number, t: number, k: 0 | 1) =>
    a[k] * (1 - s) * (1 - t) + b[k] * s * (1 - t) + c[k] * s * t + d[k] * (1 - s) * t;
  return ([x, y]) => {
    let [s, t] = [0.5, 0.5];
    for (let step = 0; step < STEPS; step++) {
      const [dx, dy] = [x - at(s, t, 0), y - at(s, t, 1)];
      const across = [0, 1].map((k) => (1 - t) * (b[k as 0] - a[k as 0]) + t * (c[k as 0] - d[k as 0])) as [
        number,
        number,
      ];
      const down = [0, 1].map((k) => (1 - s) * (d[k as 0] - a[k as 0]) + s * (c[k as 0] - b[k as 0])) as [
        number,
        number,
      ];
      const area = across[0] * down[1] - across[1] * down[0];
      if (Math.abs(area) < 1e-12) break;
      s += (dx * down[1] - dy * down[0]) / area;
      t += (dy * across[0] - dx * across[1]) / area;
    }
    return [s, t];
  };
}
