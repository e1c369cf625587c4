import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import {
  type FourPoints,
  homographyOf,
  isFourSided,
  type PlanePoint,
  throughHomography,
} from "./homography.ts";
import { planarPose, seenIn, type Vector } from "./planar-pose.ts";

const UNIT: FourPoints = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

describe("a homography", () => {
  // Worked through in Heckbert, “Fundamentals of Texture Mapping and Image Warping” (1989), §2.2.3: the unit square onto a
  // quadrilateral has g = |Σx Δx2; Σy Δy2| / |Δx1 Δx2; Δy1 Δy2| and h likewise, in closed form.
  test("of the unit square is that of the closed form", () => {
    const to: FourPoints = [
      [10, 20],
      [110, 40],
      [90, 150],
      [0, 120],
    ];
    const h = homographyOf(UNIT, to);
    if (h === undefined) throw new Error("no homography");
    const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = to;
    const [dx1, dx2, sx] = [x1 - x2, x3 - x2, x0 - x1 + x2 - x3];
    const [dy1, dy2, sy] = [y1 - y2, y3 - y2, y0 - y1 + y2 - y3];
    const bottom = dx1 * dy2 - dx2 * dy1;
    const [g, k] = [(sx * dy2 - dx2 * sy) / bottom, (dx1 * sy - sx * dy1) / bottom];
    const wanted = [x1 - x0 + g * x1, x3 - x0 + k * x3, x0, y1 - y0 + g * y1, y3 - y0 + k * y3, y0, g, k, 1];
    wanted.forEach((value, n) => {
      expectNear(h[n] as number, value, 1e-9 * Math.max(1, Math.abs(value)));
    });
  });

  test("takes any corners to any others, and back", () => {
    const spot = fc.tuple(
      fc.double({ min: -0.3, max: 0.3, noNaN: true }),
      fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    );
    const corners = fc
      .tuple(spot, spot, spot, spot)
      .map(
        (by) =>
          by.map(
            ([x, y], k): PlanePoint => [1000 * ((UNIT[k]?.[0] ?? 0) + x), 1000 * ((UNIT[k]?.[1] ?? 0) + y)],
          ) as unknown as FourPoints,
      );
    fc.assert(
      fc.property(
        corners,
        corners,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (from, to, u, v) => {
          fc.pre(isFourSided(from) && isFourSided(to));
          const [there, back] = [homographyOf(from, to), homographyOf(to, from)];
          if (there === undefined || back === undefined) throw new Error("no homography");
          from.forEach((corner, k) => {
            const seen = throughHomography(there, corner);
            expect(
              Math.hypot(
                (seen?.[0] ?? 1e9) - (to[k] as PlanePoint)[0],
                (seen?.[1] ?? 1e9) - (to[k] as PlanePoint)[1],
              ),
            ).toBeLessThan(1e-5);
          });
          const inside: PlanePoint = [
            (1 - u) * (1 - v) * from[0][0] +
              u * (1 - v) * from[1][0] +
              u * v * from[2][0] +
              (1 - u) * v * from[3][0],
            (1 - u) * (1 - v) * from[0][1] +
              u * (1 - v) * from[1][1] +
              u * v * from[2][1] +
              (1 - u) * v * from[3][1],
          ];
          const seen = throughHomography(there, inside);
          const again = seen && throughHomography(back, seen);
          expect(Math.hypot((again?.[0] ?? 1e9) - inside[0], (again?.[1] ?? 1e9) - inside[1])).toBeLessThan(
            1e-3,
          );
        },
      ),
    );
  });

  test("is not made of corners on one line, or of a crossed figure", () => {
    expect(
      homographyOf(
        [
          [0, 0],
          [1, 0],
          [2, 0],
          [0, 1],
        ],
        UNIT,
      ),
    ).toBeUndefined();
    expect(
      homographyOf(
        [
          [0, 0],
          [1, 1],
          [1, 0],
          [0, 1],
        ],
        UNIT,
      ),
    ).toBeUndefined();
  });
});

const PICTURE = { widthPx: 1600, heightPx: 1200 };
const WINDOW = { widthMm: 900, heightMm: 1400 };

/** A camera turned by `around` and `above`, its focal length, and how far off: the corners that it sees. */
function photographed(focalPx: number, around: number, above: number, awayMm: number): FourPoints {
  const [ca, sa, cb, sb] = [Math.cos(around), Math.sin(around), Math.cos(above), Math.sin(above)];
  const corners: Vector[] = [
    [0, 0, 0],
    [900, 0, 0],
    [900, 1400, 0],
    [0, 1400, 0],
  ];
  return corners.map(([px, py]): PlanePoint => {
    const [x, y] = [px - 430, py - 650];
    const [x1, z1] = [ca * x, -sa * x];
    const [y2, z2] = [cb * y - sb * z1, sb * y + cb * z1];
    const z = z2 + awayMm;
    return [800 + (focalPx * x1) / z, 600 + (focalPx * y2) / z];
  }) as unknown as FourPoints;
}

describe("the pose of a rectangle", () => {
  test.each([
    [1400, 0.35, 0.1],
    [1100, -0.5, 0.15],
    [2000, 0.25, -0.2],
  ])("is that of the camera that saw it: focal length %i px", (focalPx, around, above) => {
    const corners = photographed(focalPx, around, above, 3000);
    const pose = planarPose(corners, WINDOW, PICTURE);
    if (pose === undefined) throw new Error("no pose");
    expect(pose.focalBy).toBe("perspective");
    expectNear(pose.focalPx, focalPx, 1e-6 * focalPx);
    expect(pose.missPx).toBeLessThan(1e-6);
    // The middle of the picture looks at (430, 650) of the window, 3 m away.
    expectNear(
      Math.hypot(
        ...[0, 1, 2].map(
          (c) =>
            (pose.originMm[c] as number) +
            430 * (pose.axes[0][c] as number) +
            650 * (pose.axes[1][c] as number),
        ),
      ),
      3000,
      1e-3,
    );
  });

  // Caprile & Torre, “Using vanishing points for camera calibration”, IJCV 4 (1990): the vanishing points of two directions
  // at right angles, about the middle of the picture, have f² = −p·q.
  test("has the focal length of its two vanishing points", () => {
    const corners = photographed(1300, 0.4, 0.25, 2600);
    const meet = ([a, b]: [PlanePoint, PlanePoint], [c, d]: [PlanePoint, PlanePoint]): PlanePoint => {
      const bottom = (a[0] - b[0]) * (c[1] - d[1]) - (a[1] - b[1]) * (c[0] - d[0]);
      const [p, q] = [a[0] * b[1] - a[1] * b[0], c[0] * d[1] - c[1] * d[0]];
      return [
        (p * (c[0] - d[0]) - (a[0] - b[0]) * q) / bottom - 800,
        (p * (c[1] - d[1]) - (a[1] - b[1]) * q) / bottom - 600,
      ];
    };
    const [a, b, c, d] = corners;
    const [p, q] = [meet([a, b], [d, c]), meet([a, d], [b, c])];
    const pose = planarPose(corners, WINDOW, PICTURE);
    expectNear(pose?.focalPx ?? 0, Math.sqrt(-(p[0] * q[0] + p[1] * q[1])), 1e-3);
  });

  test("seen squarely tells no focal length: a usual one is taken and said to be", () => {
    const pose = planarPose(photographed(1400, 0, 0, 3000), WINDOW, PICTURE);
    expect(pose?.focalBy).toBe("assumed");
    expect(pose?.missPx).toBeLessThan(1e-6);
  });

  test("a place before the window is seen larger, and straight ahead stays where it is", () => {
    const pose = planarPose(photographed(1400, 0, 0, 3000), WINDOW, PICTURE);
    if (pose === undefined) throw new Error("no pose");
    const [at, before] = [seenIn(pose, [0, 0, 0]), seenIn(pose, [0, 0, 300])];
    expect(Math.hypot(...(before ?? [0, 0]))).toBeGreaterThan(Math.hypot(...(at ?? [0, 0])));
  });

  test("corners that are off by a pixel move the corners by no more than a few", () => {
    const exact = photographed(1400, 0.35, 0.1, 3000);
    const marked = exact.map(
      ([x, y], k): PlanePoint => [x + (k % 2 ? 1 : -1), y + (k < 2 ? 1 : -1)],
    ) as unknown as FourPoints;
    expect(planarPose(marked, WINDOW, PICTURE)?.missPx).toBeLessThan(3);
  });
});
