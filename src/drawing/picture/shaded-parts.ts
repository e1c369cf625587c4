import type { Point } from "../model.ts";
import type { SeenFace } from "./seen-face.ts";

/** Part of a face, by shares of the way across it and down it, and the light on it. */
export interface ShadedPart {
  seen: SeenFace;
  from: Point;
  to: Point;
  light: number;
}

/** Light that differs by less than this from one end of a face to the other is seen as one; by more, where parts get too many. */
const SEEN_STEP = 0.045;
const COARSER = 1.7;
/** Parts of all faces that a page bears. */
const MOST_OF_ALL = 4500;
const MOST_PARTS = 4;
/** Parts narrower than this gain nothing, mm as seen. */
const LEAST_MM = 9;

export function wholeFace(seen: SeenFace): ShadedPart {
  return { seen, from: [0, 0], to: [1, 1], light: seen.light };
}

/**
 * Faces divided where the light changes across them, so that it runs smoothly from one to the next: at every node it is the
 * mean of the faces that meet there (Gouraud 1971), between them bilinear.
 */
export function shadedParts(faces: readonly SeenFace[]): ShadedPart[] {
  const sums = new Map<number, { light: number; count: number }>();
  // What is seen from the back meets nothing that is seen from the front.
  const keyOf = (node: number, isFace: boolean) => 2 * node + (isFace ? 1 : 0);
  for (const { nodes, isFace, light } of faces) {
    for (const node of nodes) {
      const key = keyOf(node, isFace);
      const sum = sums.get(key) ?? { light: 0, count: 0 };
      sum.light += light;
      sum.count++;
      sums.set(key, sum);
    }
  }
  const lights = faces.map(
    (seen) =>
      seen.nodes.map((node) => {
        const sum = sums.get(keyOf(node, seen.isFace));
        return sum === undefined ? seen.light : sum.light / sum.count;
      }) as Lights,
  );
  const parts = (step: number) => faces.flatMap((seen, k) => divided(seen, lights[k] as Lights, step));
  for (let step = SEEN_STEP; step < 1; step *= COARSER) {
    const found = parts(step);
    if (found.length <= MOST_OF_ALL) return found;
  }
  return parts(1);
}

/** At the four nodes of a face. */
type Lights = [number, number, number, number];

function divided(seen: SeenFace, [a, b, c, d]: Lights, step: number): ShadedPart[] {
  const { corners } = seen;
  const longMm = (from: number, to: number) => {
    const [p, q] = [corners[from] as Point, corners[to] as Point];
    return Math.hypot(q[0] - p[0], q[1] - p[1]);
  };
  const acrossMm = Math.max(longMm(0, 1), longMm(3, 2));
  const downMm = Math.max(longMm(1, 2), longMm(0, 3));
  const across = partsOf(Math.max(Math.abs(b - a), Math.abs(c - d)) / step, acrossMm);
  const down = partsOf(Math.max(Math.abs(d - a), Math.abs(c - b)) / step, downMm);
  const parts: ShadedPart[] = [];
  for (let j = 0; j < down; j++) {
    for (let i = 0; i < across; i++) {
      const [s, t] = [(i + 0.5) / across, (j + 0.5) / down];
      parts.push({
        seen,
        from: [i / across, j / down],
        to: [(i + 1) / across, (j + 1) / down],
        light: (1 - t) * ((1 - s) * a + s * b) + t * ((1 - s) * d + s * c),
      });
    }
  }
  return parts;
}

function partsOf(steps: number, lengthMm: number): number {
  return Math.max(1, Math.min(MOST_PARTS, Math.floor(lengthMm / LEAST_MM), Math.ceil(steps)));
}
