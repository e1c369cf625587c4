import type { Point } from "../../model.ts";
import type { ClothArea, ClothPrint } from "./cloth-print.ts";
import { type CutLine, cutByLine } from "./cut-by-line.ts";
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
  const found: { colour: string; part: readonly Point[] }[] = [];
  const wholeMm2 = WHOLE * areaOf(corners);
  const edges = edgesOf(corners);
  for (const area of print.areasNear(box)) {
    for (const part of withinFace(area, edges)) {
      const mm2 = areaOf(part);
      if (mm2 <= LEAST_MM2) continue;
      // What covers the face hides all that was printed before.
      if (mm2 >= wholeMm2) found.length = 0;
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

/** The four sides of a face, each moved out a little. */
function edgesOf(corners: readonly Point[]): CutLine[] {
  return corners.map(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % corners.length] as Point;
    const [dx, dy] = [bx - ax, by - ay];
    return { a: -dy, b: dx, c: dy * ax - dx * ay + OVER_MM * Math.sqrt(dx * dx + dy * dy) };
  });
}

function withinFace({ points, box }: ClothArea, edges: readonly CutLine[]): readonly (readonly Point[])[] {
  let parts: readonly (readonly Point[])[] = [points];
  for (const edge of edges) {
    const { a, b, c } = edge;
    // Its farthest corner out on that side.
    const [x, y] = [a > 0 ? box.left : box.right, b > 0 ? box.top : box.bottom];
    if (a * x + b * y + c < 0) parts = parts.flatMap((part) => cutByLine(part, edge));
  }
  return parts;
}

const STEPS = 3;

/** The inverse of the bilinear map of a face, by Newton’s method: faces on the cloth are nearly rectangles. */
function sharesOf([a, b, c, d]: readonly [Point, Point, Point, Point]): (place: Point) => Point {
  // x = ax + s·bx + t·cx + s·t·dx, and y alike.
  const [ax, ay] = a;
  const [bx, by] = [b[0] - ax, b[1] - ay];
  const [cx, cy] = [d[0] - ax, d[1] - ay];
  const [dx, dy] = [ax - b[0] + c[0] - d[0], ay - b[1] + c[1] - d[1]];
  return ([x, y]) => {
    let [s, t] = [0.5, 0.5];
    for (let step = 0; step < STEPS; step++) {
      const [offX, offY] = [x - ax - s * bx - t * cx - s * t * dx, y - ay - s * by - t * cy - s * t * dy];
      const [acrossX, acrossY] = [bx + t * dx, by + t * dy];
      const [downX, downY] = [cx + s * dx, cy + s * dy];
      const area = acrossX * downY - acrossY * downX;
      if (Math.abs(area) < 1e-12) break;
      s += (offX * downY - offY * downX) / area;
      t += (offY * acrossX - offX * acrossY) / area;
    }
    return [s, t];
  };
}
