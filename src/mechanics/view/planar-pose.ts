import {
  type FourPoints,
  type Homography,
  homographyOf,
  isFourSided,
  type PlanePoint,
} from "./homography.ts";

export type Vector = readonly [number, number, number];

/** From where a rectangle of known size was photographed. */
export interface PlanarPose {
  /** Focal length in pixels, square pixels and the middle of the picture on the axis. */
  focalPx: number;
  /** `perspective`: from the picture itself; `assumed`: its sides run too nearly alike to tell, a usual lens is taken. */
  focalBy: "perspective" | "assumed";
  /** Columns of the rotation: the plane's x, y and its normal, as the camera sees them (x right, y down, z away). */
  axes: readonly [Vector, Vector, Vector];
  /** Where the plane's origin is from the camera, mm. */
  originMm: Vector;
  /** How far the corners would be seen from where they were marked, px: the root of the mean square. */
  missPx: number;
}

/** A usual lens of a telephone: so many times the longer side of the picture. */
const USUAL_FOCAL = 0.8;
const FOCALS = { least: 0.35, most: 6 };
/** Less of a perspective than this tells no focal length, as a share of what would. */
const LEAST_PERSPECTIVE = 0.02;

/**
 * The pose of a rectangle, `widthMm` by `heightMm` from its upper left corner, by its four corners in a picture: focal
 * length from the homography and the pose from its columns (Zhang, “A flexible new technique for camera calibration”, IEEE
 * Trans. PAMI 22(11), 2000, §3.1, one plane with the principal point in the middle and no skew); columns made square by the
 * nearest rotation. Undefined where the corners are no four-sided figure seen from its front.
 */
export function planarPose(
  corners: FourPoints,
  { widthMm, heightMm }: { widthMm: number; heightMm: number },
  picture: { widthPx: number; heightPx: number },
): PlanarPose | undefined {
  if (!isFourSided(corners)) return undefined;
  const middle: PlanePoint = [picture.widthPx / 2, picture.heightPx / 2];
  const about = corners.map(([x, y]): PlanePoint => [x - middle[0], y - middle[1]]) as unknown as FourPoints;
  const plane: FourPoints = [
    [0, 0],
    [widthMm, 0],
    [widthMm, heightMm],
    [0, heightMm],
  ];
  const h = homographyOf(plane, about);
  if (h === undefined) return undefined;
  const longer = Math.max(picture.widthPx, picture.heightPx);
  const found = focalOf(h, longer, { widthMm, heightMm });
  const focalPx = found ?? USUAL_FOCAL * longer;
  const column = (k: 0 | 1 | 2): Vector => [
    h[k] / focalPx,
    (h[3 + k] as number) / focalPx,
    h[6 + k] as number,
  ];
  const [a, b, t] = [column(0), column(1), column(2)];
  const scale = 1 / Math.sqrt(length(a) * length(b));
  // Before the camera, not behind it.
  const sign = t[2] < 0 ? -scale : scale;
  const [x, y] = squared(times(a, sign), times(b, sign));
  const pose = {
    focalPx,
    focalBy: found === undefined ? ("assumed" as const) : ("perspective" as const),
    axes: [x, y, crossOf(x, y)] as const,
    originMm: times(t, sign),
  };
  const misses = plane.map(([px, py], k) => {
    const seen = seenIn(pose, [px, py, 0]);
    const [u, v] = about[k] as PlanePoint;
    return seen === undefined ? Number.POSITIVE_INFINITY : (seen[0] - u) ** 2 + (seen[1] - v) ** 2;
  });
  return { ...pose, missPx: Math.sqrt(misses.reduce((sum, miss) => sum + miss, 0) / 4) };
}

/** Where a place is seen, px from the middle of the picture: x, y on the plane, z towards the camera, mm. */
export function seenIn(
  { axes, originMm, focalPx }: Pick<PlanarPose, "axes" | "originMm" | "focalPx">,
  [x, y, z]: Vector,
): PlanePoint | undefined {
  // The normal points away from the camera, since y runs down.
  const place = [0, 1, 2].map(
    (c) =>
      (originMm[c] as number) +
      x * (axes[0][c] as number) +
      y * (axes[1][c] as number) -
      z * (axes[2][c] as number),
  ) as [number, number, number];
  return place[2] <= 0 ? undefined : [(focalPx * place[0]) / place[2], (focalPx * place[1]) / place[2]];
}

/** Focal length by the columns' being square to each other and, better where that tells little, of one length. */
function focalOf(
  h: Homography,
  longer: number,
  { widthMm, heightMm }: { widthMm: number; heightMm: number },
): number | undefined {
  const square = -(h[0] * h[1] + h[3] * h[4]);
  const bySquare = h[6] * h[7];
  const even = -(h[0] ** 2 + h[3] ** 2 - h[1] ** 2 - h[4] ** 2);
  const byEven = h[6] ** 2 - h[7] ** 2;
  // How much the far side is smaller, across and down the rectangle.
  const tells = Math.max(Math.abs(h[6]) * widthMm, Math.abs(h[7]) * heightMm);
  if (tells < LEAST_PERSPECTIVE) return undefined;
  // Both equations for 1/f², weighed by how much each tells: least squares.
  const weight = bySquare ** 2 + byEven ** 2;
  const squared = (square * bySquare + even * byEven) / weight;
  const focal = Math.sqrt(squared);
  return focal >= FOCALS.least * longer && focal <= FOCALS.most * longer ? focal : undefined;
}

/** The nearest pair of unit vectors at right angles: both turned by the same. */
function squared(a: Vector, b: Vector): [Vector, Vector] {
  const [u, v] = [times(a, 1 / length(a)), times(b, 1 / length(b))];
  const sum = plus(u, v);
  const difference = plus(u, times(v, -1));
  const [p, q] = [times(sum, 1 / length(sum)), times(difference, 1 / length(difference))];
  const half = Math.SQRT1_2;
  return [times(plus(p, q), half), times(plus(p, times(q, -1)), half)];
}

function times([x, y, z]: Vector, by: number): Vector {
  return [x * by, y * by, z * by];
}

function plus(a: Vector, b: Vector): Vector {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function length(a: Vector): number {
  return Math.hypot(...a);
}

function crossOf(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
