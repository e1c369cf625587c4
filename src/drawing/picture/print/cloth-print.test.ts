import { describe, expect, test } from "vitest";
import { gatheredBalloon } from "../../../../test/gallery/gathered-windows.ts";
import { banded, pleatedBalloon, wide } from "../../../../test/gallery/windows.ts";
import { drapeShade } from "../../../drape/index.ts";
import { SWATCH_SIDE } from "../../../job/index.ts";
import { plan } from "../../../plan/index.ts";
import type { Point } from "../../model.ts";
import { sewnMarks } from "../../sheets/sewn-marks.ts";
import { type ClothArea, clothPattern, withAreas } from "./cloth-print.ts";
import { cutByLine } from "./cut-by-line.ts";
import { areaOf, outlinesOf } from "./outlines.ts";
import { paletteOf } from "./palette.ts";
import { printOnFace } from "./print-on-face.ts";

const MOTIF = {
  ...{ originXMm: 30, originYMm: 40, originAlongMm: 40, repeatXMm: 200, repeatYMm: 300 },
  ...{ match: "straight" as const, acrossKnown: true },
};
const ONE_M2 = 1e6;
const EVERYWHERE = { left: 0, right: 1000, top: 0, bottom: 1000 };

/** A swatch by the colour of each of its cells. */
function swatchOf(colourAt: (x: number, y: number) => string): string {
  return Array.from({ length: SWATCH_SIDE ** 2 }, (_, n) =>
    colourAt(n % SWATCH_SIDE, Math.floor(n / SWATCH_SIDE)),
  ).join("");
}

/** The colour that is seen at a place: the topmost area over it, by the even–odd rule. */
function colourAt(print: ReturnType<typeof clothPattern>, x: number, y: number): string | undefined {
  const areas = print?.areasNear({ left: x, right: x + 1e-6, top: y, bottom: y + 1e-6 }) ?? [];
  return areas.findLast((area) => isWithin(area, x, y))?.colour ?? print?.ground;
}

function isWithin({ points }: ClothArea, x: number, y: number): boolean {
  let inside = false;
  points.forEach(([ax, ay], k) => {
    const [bx, by] = points[(k + 1) % points.length] as Point;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

describe("the pattern of a cloth by its place", () => {
  const left = swatchOf((x) => (x < SWATCH_SIDE / 2 ? "aa0000" : "00bb00"));
  const corner = swatchOf((x, y) => (x < 8 && y < 8 ? "0000cc" : "eeeeee"));
  const photo = (swatch: string, motif: object = {}) =>
    clothPattern({ colour: "#d9c7a3", motif: { ...MOTIF, ...motif }, swatch }, ONE_M2);

  test("begins where the cutting plan has it and comes again with every repeat", () => {
    for (const [dx, dy] of [
      [0, 0],
      [200, 0],
      [0, 300],
      [-200, 600],
    ] as const) {
      expect(colourAt(photo(corner), 30 + 20 + dx, 40 + 30 + dy)).toBe("#0000cc");
      expect(colourAt(photo(corner), 30 + 60 + dx, 40 + 30 + dy)).toBe("#eeeeee");
      expect(colourAt(photo(corner), 30 + 20 + dx, 40 + 90 + dy)).toBe("#eeeeee");
    }
  });

  test("on a half drop every second column lies half a repeat lower, to the left as to the right", () => {
    const dropped = photo(corner, { match: "half-drop" });
    for (const column of [-1, 1, 3]) {
      expect(colourAt(dropped, 30 + 20 + 200 * column, 40 + 30)).toBe("#eeeeee");
      expect(colourAt(dropped, 30 + 20 + 200 * column, 40 + 30 + 150)).toBe("#0000cc");
    }
    expect(colourAt(dropped, 30 + 20, 40 + 30)).toBe("#0000cc");
  });

  test("is that of a photo where there is one, else a lozenge; repeats too small to be seen have none", () => {
    expect(colourAt(photo(left), 40, 50)).toBe("#aa0000");
    expect(colourAt(photo(left), 220, 50)).toBe("#00bb00");
    const plain = clothPattern({ colour: "#d9c7a3", motif: MOTIF }, ONE_M2);
    expect(colourAt(plain, 31, 41)).toBe("#d9c7a3");
    expect(colourAt(plain, 130, 190)).not.toBe("#d9c7a3");
    expect(photo(left, { repeatXMm: 20 })).toBeUndefined();
    expect(clothPattern({ colour: "#d9c7a3" }, ONE_M2)).toBeUndefined();
  });

  test("stripes are as wide as they were counted, and each is one area over the whole cloth", () => {
    const [fourth, half] = [SWATCH_SIDE / 4, SWATCH_SIDE / 2];
    const stripes = photo(
      swatchOf((x) => (x < half ? "ffffff" : x < half + fourth / 2 ? "cc2200" : "002266")),
    );
    const areas = stripes?.areasNear(EVERYWHERE) ?? [];
    const of = (hex: string) => areas.filter(({ colour }) => colour === hex);
    expect(of("#cc2200")[0]?.box.right).toBeCloseTo((of("#cc2200")[0]?.box.left ?? 0) + 25, 6);
    // One a repeat, and six repeats at the most touch one metre.
    expect(of("#cc2200").length).toBeLessThanOrEqual(6);
  });
});

test("colours that look alike are one; what is left are their means, the most common first", () => {
  const few = paletteOf([...Array(5).fill("c0c0c0"), ...Array(3).fill("102030"), "c1c0bf", "c0c1c0"]);
  expect(few.hexes).toHaveLength(2);
  expect(few.hexes[0]).toMatch(/^#c0c0c0|#c0c1c0$/);
  expect(few.hexes[1]).toBe("#102030");
  expect([...few.of]).toEqual([0, 0, 0, 0, 0, 1, 1, 1, 0, 0]);
});

describe("outlines of cells", () => {
  test("of a ring of cells has the area of its cells less a little at the corners, and its hole is left out", () => {
    const [line] = outlinesOf(
      10,
      10,
      (x, y) => x > 0 && x < 9 && y > 0 && y < 9 && !(x > 3 && x < 6 && y > 3 && y < 6),
    );
    // 64 cells less 4, each outer corner cut by an eighth, each inner one filled by as much; the slit is all but none.
    expect(areaOf(line ?? [])).toBeCloseTo(60, 1);
    expect(isWithin({ colour: "", points: line ?? [], box: EVERYWHERE }, 5, 5)).toBe(false);
    expect(isWithin({ colour: "", points: line ?? [], box: EVERYWHERE }, 7.5, 5)).toBe(true);
  });
});

describe("cutting by a straight line", () => {
  /** A comb: teeth upwards, so that a level line crosses it many times. */
  const comb: Point[] = [
    [0, 0],
    ...[0, 1, 2, 3].flatMap((k): Point[] => [
      [3 * k + 1, 9],
      [3 * k + 2, 9 + k],
      [3 * k + 2.5, 1],
    ]),
    [13, 0],
  ];

  test("both sides together have the whole area, wherever the line runs", () => {
    for (let k = 0; k < 40; k++) {
      const turn = 0.37 * k;
      const off = 6 - 0.25 * k;
      const [a, b] = [Math.cos(turn), Math.sin(turn)];
      const c = -6 * a - 4 * b - off / 2;
      const sum = (parts: (readonly Point[])[]) =>
        parts.reduce((total, one) => total + Math.abs(areaOf(one)), 0);
      const whole = sum(cutByLine(comb, { a, b, c })) + sum(cutByLine(comb, { a: -a, b: -b, c: -c }));
      expect(whole).toBeCloseTo(Math.abs(areaOf(comb)), 9);
    }
  });

  test("teeth above the line are areas of their own", () => {
    expect(cutByLine(comb, { a: 0, b: 1, c: -5 })).toHaveLength(4);
    expect(cutByLine(comb, { a: 0, b: -1, c: 5 })).toHaveLength(1);
  });
});

const SQUARE = [
  { a: 1, b: 0, c: 0 },
  { a: -1, b: 0, c: 1 },
  { a: 0, b: 1, c: 0 },
  { a: 0, b: -1, c: 1 },
];

test("an area laid over many faces is all there: its parts on them have its area", () => {
  const points: Point[] = [
    [12, 8],
    [88, 20],
    [60, 50],
    [90, 95],
    [20, 70],
  ];
  const print = withAreas({ ground: "#ffffff", dark: "#ffffff", isPatterned: false, areasNear: () => [] }, [
    { colour: "#112233", points },
  ]);
  let total = 0;
  // Slanted faces, so that shares are no mere quotients.
  const node = (i: number, j: number): Point => [10 * i + j, 10 * j - 0.8 * i];
  for (let j = -1; j < 11; j++)
    for (let i = -1; i < 11; i++) {
      const corners = [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)] as const;
      for (const { shares } of printOnFace(print, [...corners])) {
        // Shares reach a little over the face; only what lies within is counted.
        const inside = SQUARE.reduce<(readonly Point[])[]>(
          (parts, edge) => parts.flatMap((part) => cutByLine(part, edge)),
          [shares],
        );
        total += inside.reduce((sum, part) => sum + areaOf(part), 0) * Math.abs(areaOf(corners));
      }
    }
  // Crumbs of a few square millimetres are left out.
  expect(total / areaOf(points)).toBeGreaterThan(0.97);
  expect(total / areaOf(points)).toBeLessThanOrEqual(1 + 1e-9);
});

test("joins and bands lie on the cloth where the cutting plan has them", () => {
  const { shade } = wide();
  const face = shade.cloth.layers.find(({ layer }) => layer === "face");
  const seams = sewnMarks(shade).slice(0, face?.seamsMm.length);
  expect(seams.length).toBeGreaterThan(0);
  // A flat face is as wide as its shade: its left edge is that of the shade.
  seams.forEach(({ points }, k) => {
    const mean = points.reduce((sum, { x }) => sum + x, 0) / points.length;
    expect(mean).toBeCloseTo(face?.seamsMm[k] ?? 0, 6);
  });
  const bands = sewnMarks(banded().shade).filter(({ colour }) => typeof colour === "string");
  const shown = banded().shade.cloth.bands;
  expect(bands).toHaveLength(shown.length);
  bands.forEach(({ colour, points }, k) => {
    expect(colour).toBe(shown[k]?.colour);
    expect(Math.min(...points.map(({ x }) => x))).toBeCloseTo(shown[k]?.xMm ?? -1, 6);
  });
});

test("both edges of a pleat are seen beside its line, and the cloth folded away lies between them", () => {
  const { shade } = pleatedBalloon();
  const flatMm = shade.form.allowances.reduce((sum, { widthMm }) => sum + widthMm, 0);
  const middles = sewnMarks(shade).map(({ points }) => points.reduce((sum, { x }) => sum + x, 0) / 4);
  expect(middles).toHaveLength(2 * shade.form.pleats.length);
  shade.form.pleats.forEach(({ foldedMm, flatMm: [left] }, k) => {
    const [a, b] = [middles[2 * k] as number, middles[2 * k + 1] as number];
    // Each is three millimetres wide and lies wholly on the cloth that is seen.
    expect(b - a).toBeCloseTo(foldedMm + 3, 6);
    expect(a + flatMm / 2).toBeCloseTo(left - 1.5, 6);
  });
});

test("bands on gathered cloth lie as far in from its edges as the cutting plan has them on the flat cloth, and up from its hem", () => {
  const { job, shade } = gatheredBalloon();
  const [window] = job.rooms[0]?.windows ?? [];
  if (window === undefined) throw new Error("invalid gallery job: no window");
  window.shade.making = {
    ...window.shade.making,
    banding: { where: "sides-and-bottom", widthMm: 60, insetMm: 25 },
  };
  const [gathered] = plan(job).shades;
  if (gathered === undefined) throw new Error("invalid gallery job: no shade");
  const [left, right, bottom] = sewnMarks(gathered).filter(({ colour }) => typeof colour === "string");
  const xs = (mark = left) => (mark?.points ?? []).map(({ x }) => x);
  const wideMm = gathered.form.allowances.reduce((sum, one) => sum + one.widthMm, shade.size.finishedWidthMm);
  const edgeMm = (shade.size.finishedWidthMm - wideMm) / 2;
  expect(edgeMm).toBeLessThan(-300);
  expect(Math.min(...xs(left))).toBeCloseTo(edgeMm + 25, 6);
  expect(Math.max(...xs(left))).toBeCloseTo(edgeMm + 85, 6);
  expect(Math.max(...xs(right))).toBeCloseTo(edgeMm + wideMm - 25, 6);
  expect(Math.max(...xs(bottom)) - Math.min(...xs(bottom))).toBeCloseTo(wideMm - 50, 6);
  expect(bottom?.points.map(({ y }) => y).sort((a, b) => a - b)).toEqual([-85, -85, -25, -25]);
  expect(bottom?.points.every(({ from }) => from === "hem")).toBe(true);
});

test("cloth behind a pleat is left out of what is seen: the lines beside it are as far apart on the cloth as is folded away", () => {
  const { shade } = pleatedBalloon();
  const { across, clothMm, placesMm } = drapeShade(shade, 0).cloth;
  const twice: number[] = [];
  for (let i = 1; i < across; i++) {
    const isTwice = [0, 1, 2].every((c) => placesMm[3 * i + c] === placesMm[3 * (i - 1) + c]);
    if (isTwice) twice.push((clothMm[2 * i] as number) - (clothMm[2 * (i - 1)] as number));
  }
  const inner = shade.form.pleats.slice(1, -1);
  expect(twice).toHaveLength(inner.length);
  twice.forEach((mm, k) => {
    expect(mm).toBeCloseTo(inner[k]?.foldedMm ?? 0, 3);
  });
});
