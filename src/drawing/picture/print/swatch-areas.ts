import { SWATCH_SIDE } from "../../../job/index.ts";
import type { Point } from "../../model.ts";
import { cutByLine } from "./cut-by-line.ts";
import { areaOf, outlinesOf } from "./outlines.ts";
import { paletteOf } from "./palette.ts";

/** An area of one colour within a repeat, as shares of it; what comes later lies over what came before. */
export interface PrintedArea {
  colour: string;
  points: readonly Point[];
}

export interface PrintedRepeat {
  /** Under all areas. */
  ground: string;
  areas: PrintedArea[];
  /** Stripes: the same all along the cloth, or all across it. */
  alike?: "along" | "across";
}

/** Cells round a repeat that are looked at with it, so that outlines run on into the next one. */
const ROUND = 2;
/** What only touches the repeat is no part of it. */
const LEAST_AREA = 1e-5;

/**
 * A swatch as areas of few colours: under all of them the most common, and each further one over all that are rarer, so
 * that none gapes. `side`: into so many cells the repeat is divided.
 */
export function swatchAreas(swatch: string, isHalfDrop: boolean, side: number): PrintedRepeat {
  const { of, hexes } = paletteOf(coarser(swatch, side));
  const at = (x: number, y: number) => {
    const column = Math.floor(x / side);
    const dropped = isHalfDrop && Math.abs(column % 2) === 1 ? side / 2 : 0;
    return of[wrapped(y - dropped, side) * side + (x - column * side)] as number;
  };
  const alike = alikeOf(of, side, isHalfDrop);
  const whole = side + 2 * ROUND;
  const areas = hexes.slice(1).flatMap((colour, k) =>
    outlinesOf(whole, whole, (x, y) => at(x - ROUND, y - ROUND) > k)
      .map((ring) => ring.map(([x, y]): Point => [(x - ROUND) / side, (y - ROUND) / side]))
      .flatMap(inRepeat)
      .filter((points) => areaOf(points) > LEAST_AREA)
      .map((points) => ({ colour, points })),
  );
  return { ground: hexes[0] ?? "#808080", areas, ...(alike === undefined ? {} : { alike }) };
}

/** What of an area lies within its repeat. */
function inRepeat(ring: Point[]): (readonly Point[])[] {
  return REPEAT_EDGES.reduce<(readonly Point[])[]>(
    (parts, edge) => parts.flatMap((part) => cutByLine(part, edge)),
    [ring],
  );
}

const REPEAT_EDGES = [
  { a: 1, b: 0, c: 0 },
  { a: 0, b: 1, c: 0 },
  { a: -1, b: 0, c: 1 },
  { a: 0, b: -1, c: 1 },
];

function alikeOf(of: Uint8Array, side: number, isHalfDrop: boolean): PrintedRepeat["alike"] {
  const isSame = (one: (k: number, other: number) => number, first: (k: number, other: number) => number) =>
    of.every((_, n) => {
      const [x, y] = [n % side, Math.floor(n / side)];
      return of[one(x, y)] === of[first(x, y)];
    });
  const here = (x: number, y: number) => y * side + x;
  if (isSame(here, (x) => x)) return "along";
  if (!isHalfDrop && isSame(here, (_, y) => y * side)) return "across";
  return undefined;
}

/** The swatch in fewer colours across and down, each the mean of those it stands for. */
function coarser(swatch: string, side: number): string[] {
  const each = SWATCH_SIDE / side;
  return Array.from({ length: side * side }, (_, n) => {
    const [x, y] = [(n % side) * each, Math.floor(n / side) * each];
    const sum = [0, 0, 0];
    for (let v = 0; v < each; v++)
      for (let u = 0; u < each; u++)
        for (let c = 0; c < 3; c++) {
          const from = 6 * ((y + v) * SWATCH_SIDE + x + u) + 2 * c;
          sum[c] = (sum[c] as number) + Number.parseInt(swatch.slice(from, from + 2), 16);
        }
    return sum
      .map((total) =>
        Math.round(total / each ** 2)
          .toString(16)
          .padStart(2, "0"),
      )
      .join("");
  });
}

function wrapped(value: number, side: number): number {
  return ((value % side) + side) % side;
}
