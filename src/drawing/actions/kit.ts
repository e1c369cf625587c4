import type { Point, Polyline, Primitive, Ref, Role } from "../model.ts";

/**
 * Action drawings are no plans of the real thing: they are set on a sheet of about 100 by 70 units, whatever the size of
 * the shade, x to the right and y down, and their figures are written rather than measured.
 */

/** Points of a smooth curve through all given ones (Catmull and Rom's spline), `steps` to each stretch. */
export function smooth(points: readonly Point[], closed = false, steps = 6): Point[] {
  const count = points.length;
  if (count < 3) return [...points];
  const at = (i: number): Point =>
    (closed ? points[(i + count) % count] : points[Math.min(count - 1, Math.max(0, i))]) ?? [0, 0];
  const out: Point[] = [];
  const stretches = closed ? count : count - 1;
  for (let i = 0; i < stretches; i += 1) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    for (let step = 0; step < steps; step += 1) {
      const t = step / steps;
      const along = (k: 0 | 1) =>
        0.5 *
        (2 * b[k] +
          (c[k] - a[k]) * t +
          (2 * a[k] - 5 * b[k] + 4 * c[k] - d[k]) * t * t +
          (3 * b[k] - a[k] - 3 * c[k] + d[k]) * t * t * t);
      out.push([along(0), along(1)]);
    }
  }
  const last = points.at(-1);
  if (!closed && last !== undefined) out.push(last);
  return out;
}

/** Points of an arc; degrees clockwise on the page from the right. */
export function arc(
  centre: Point,
  radii: number | Point,
  fromDeg: number,
  toDeg: number,
  steps = 24,
): Point[] {
  const [rx, ry] = typeof radii === "number" ? [radii, radii] : radii;
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const angle = ((fromDeg + ((toDeg - fromDeg) * i) / steps) * Math.PI) / 180;
    return [centre[0] + rx * Math.cos(angle), centre[1] + ry * Math.sin(angle)];
  });
}

export function shape(role: Role, points: readonly Point[], ref: Ref = {}): Polyline {
  return { kind: "polyline", role, points, closed: true, ...ref };
}

export function stroke(role: Role, points: readonly Point[], ref: Ref & { cord?: number } = {}): Polyline {
  return { kind: "polyline", role, points, ...ref };
}

const HEAD = 3.4;

/** The way something is moved: a line with a full head at its end. */
export function arrow(points: readonly Point[], size = HEAD): Primitive[] {
  const tip = points.at(-1);
  const before =
    [...points].reverse().find((point) => tip !== undefined && gap(point, tip) >= size * 0.8) ?? points[0];
  if (tip === undefined || before === undefined) return [];
  const length = gap(before, tip);
  const [ux, uy] = [(tip[0] - before[0]) / length, (tip[1] - before[1]) / length];
  const back: Point = [tip[0] - ux * size, tip[1] - uy * size];
  const half = size * 0.42;
  const shaft = points.filter((point) => gap(point, tip) > size * 0.8);
  return [
    stroke("motion", [...shaft, back]),
    shape("motion", [
      tip,
      [back[0] - uy * half, back[1] + ux * half],
      [back[0] + uy * half, back[1] - ux * half],
    ]),
  ];
}

function gap([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}

/** The same elsewhere: every point goes through `to`. For what has only points: no radius and no shift on paper. */
export function mapped(primitives: readonly Primitive[], to: (point: Point) => Point): Primitive[] {
  return primitives.map((one) => mappedOne(one, to));
}

function mappedOne(one: Primitive, to: (point: Point) => Point): Primitive {
  switch (one.kind) {
    case "polyline":
      return { ...one, points: one.points.map(to) };
    case "circle":
      return { ...one, centre: to(one.centre) };
    case "dimension":
      return { ...one, from: to(one.from), to: to(one.to) };
    case "facets":
      return { ...one, faces: one.faces.map((face) => ({ ...face, points: face.points.map(to) })) };
    case "callout":
    case "text":
    case "marker":
      return { ...one, at: to(one.at) };
  }
}

/** Turned about the origin, made larger, mirrored left to right if asked, then moved. */
export function put(
  primitives: readonly Primitive[],
  {
    at = [0, 0],
    deg = 0,
    size = 1,
    flip = false,
  }: { at?: Point; deg?: number; size?: number; flip?: boolean },
): Primitive[] {
  const turn = (deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn) * size, Math.sin(turn) * size];
  return mapped(primitives, ([x0, y]) => {
    const x = flip ? -x0 : x0;
    return [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos];
  });
}

const ROPE_STEPS = 8;

/**
 * A cord drawn as wide as it looks from near by, what is drawn later over what is drawn before: how a knot is read.
 * @param part only from one given point to another, by their place in the list: the rest lies at another depth
 */
export function rope(
  points: readonly Point[],
  wide = 3,
  part: readonly [from: number, to: number] = [0, points.length - 1],
): Primitive[] {
  const [from, to] = points.length < 3 ? [0, points.length - 1] : part.map((i) => i * ROPE_STEPS);
  const spine = smooth(points, false, ROPE_STEPS);
  const edge = (way: 1 | -1) => beside(spine, () => (wide / 2) * way).slice(from, (to ?? 0) + 1);
  return [
    shape("skin", [...edge(1), ...edge(-1).reverse()]),
    stroke("skin", edge(1)),
    stroke("skin", edge(-1)),
  ];
}

/** The line at a distance beside another, to its right as it runs where `offset` is positive; `share` runs from 0 to 1. */
export function beside(spine: readonly Point[], offset: (share: number) => number): Point[] {
  const count = Math.max(1, spine.length - 1);
  return spine.map((point, i): Point => {
    const before = spine[Math.max(0, i - 1)] ?? point;
    const after = spine[Math.min(count, i + 1)] ?? point;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
    const out = offset(i / count);
    return [
      point[0] - ((after[1] - before[1]) / length) * out,
      point[1] + ((after[0] - before[0]) / length) * out,
    ];
  });
}
