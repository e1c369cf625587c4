import { SWATCH_SIDE } from "../../../job/index.ts";
import type { LayerCut } from "../../../shade-plan/index.ts";
import type { Point } from "../../model.ts";
import { darkerDye } from "../lit-colour.ts";
import { areaOf } from "./outlines.ts";
import { type PrintedRepeat, swatchAreas } from "./swatch-areas.ts";

/** Upright box on the cloth, mm. */
export interface ClothBox {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** An area of one colour on the cloth, mm as `HangingCloth.clothMm` counts. */
export interface ClothArea {
  colour: string;
  points: readonly Point[];
  box: ClothBox;
}

/** What a cloth shows on its face: the colour under everything, and what lies on it near a place, the topmost last. */
export interface ClothPrint {
  ground: string;
  /** The darkest of its colours. */
  dark: string;
  /** It has a pattern, not only what was sewn on. */
  isPatterned: boolean;
  areasNear(box: ClothBox): ClothArea[];
}

/** The same with areas that lie over the pattern, in their order. */
export function withAreas(
  print: ClothPrint,
  areas: readonly { colour: string; points: readonly Point[] }[],
): ClothPrint {
  if (areas.length === 0) return print;
  const placed = areas.map(({ colour, points }) =>
    clothArea(colour, areaOf(points) < 0 ? [...points].reverse() : points),
  );
  return {
    ...print,
    areasNear: (box) => [...print.areasNear(box), ...placed.filter((area) => overlaps(area.box, box))],
  };
}

/** Repeats smaller than this blend to one colour in a picture, mm. */
export const LEAST_SHOWN_MM = 30;
/** Areas that a picture bears; a swatch of more, over all its repeats, is told more coarsely. */
const MOST_AREAS = 2500;
const LEAST_SIDE = 8;

/** Where no photo shows it, a lozenge in the middle of each repeat stands for its motif: so large, and so much darker. */
const LOZENGE = 0.32;
const DARKER = 0.88;

/**
 * The pattern of a layer where its cutting plan gives it; undefined where it has none that would be seen.
 *
 * @param areaMm2 of the whole cloth
 */
export function clothPattern(
  { colour, motif, swatch }: Pick<LayerCut, "colour" | "motif" | "swatch">,
  areaMm2: number,
): ClothPrint | undefined {
  if (motif === undefined || Math.min(motif.repeatXMm, motif.repeatYMm) < LEAST_SHOWN_MM) return undefined;
  const repeats = areaMm2 / (motif.repeatXMm * motif.repeatYMm);
  const repeat =
    swatch === undefined ? lozengeRepeat(colour) : fewAreas(swatch, motif.match === "half-drop", repeats);
  if (repeat === undefined) return undefined;
  const areasIn = placedRepeats(repeat, motif);
  const dark = darkestOf([repeat.ground, ...repeat.areas.map((area) => area.colour)]);
  return {
    ground: repeat.ground,
    dark,
    isPatterned: true,
    areasNear: (box) => near(repeat, motif, box, areasIn),
  };
}

function darkestOf(colours: readonly string[]): string {
  const sumOf = (colour: string) =>
    [1, 3, 5].reduce((sum, at) => sum + Number.parseInt(colour.slice(at, at + 2), 16), 0);
  return colours.reduce((dark, colour) => (sumOf(colour) < sumOf(dark) ? colour : dark));
}

function fewAreas(swatch: string, isHalfDrop: boolean, repeats: number): PrintedRepeat | undefined {
  for (let side = SWATCH_SIDE; side >= LEAST_SIDE; side /= 2) {
    const repeat = knownRepeat(swatch, isHalfDrop, side);
    const times = repeat.alike === undefined ? repeats : Math.sqrt(repeats);
    if (repeat.areas.length * times <= MOST_AREAS) return repeat;
  }
  return undefined;
}

/** What was worked out last: a shade is drawn again and again in the same cloth. */
const kept = new Map<string, PrintedRepeat>();
const MOST_KEPT = 12;

function knownRepeat(swatch: string, isHalfDrop: boolean, side: number): PrintedRepeat {
  const key = `${side}${isHalfDrop}${swatch}`;
  const found = kept.get(key);
  if (found !== undefined) return found;
  const repeat = swatchAreas(swatch, isHalfDrop, side);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, repeat);
  return repeat;
}

/** What is near a box, all of the undermost colour first. */
function near(
  repeat: PrintedRepeat,
  motif: Motif,
  box: ClothBox,
  areasIn: (column: number, row: number) => ClothArea[],
): ClothArea[] {
  const { originXMm, originAlongMm, repeatXMm, repeatYMm } = motif;
  const around: ClothArea[][] = [];
  for (const column of repeat.alike === "across"
    ? [0]
    : stepsOver(box.left, box.right, originXMm, repeatXMm)) {
    const top = originAlongMm + dropMm(motif, column);
    for (const row of repeat.alike === "along" ? [0] : stepsOver(box.top, box.bottom, top, repeatYMm))
      around.push(areasIn(column, row));
  }
  const found: ClothArea[] = [];
  for (let k = 0; k < repeat.areas.length; k++) {
    for (const areas of around) {
      const area = areas[k] as ClothArea;
      if (overlaps(area.box, box)) found.push(area);
    }
  }
  return found;
}

type Motif = NonNullable<LayerCut["motif"]>;

/** Farther than any cloth goes, mm: how long a stripe is. */
const ENDLESS_MM = 1e5;

/** The areas of each repeat in their place, worked out once. */
function placedRepeats(repeat: PrintedRepeat, motif: Motif): (column: number, row: number) => ClothArea[] {
  const { originXMm, originAlongMm, repeatXMm, repeatYMm } = motif;
  const known = new Map<string, ClothArea[]>();
  return (column, row) => {
    const key = `${column} ${row}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const top = originAlongMm + dropMm(motif, column);
    const place = ([x, y]: Point): Point => [
      repeat.alike === "across" ? endless(x) : originXMm + (column + x) * repeatXMm,
      repeat.alike === "along" ? endless(y) : top + (row + y) * repeatYMm,
    ];
    const areas = repeat.areas.map(({ colour, points }) => clothArea(colour, points.map(place)));
    known.set(key, areas);
    return areas;
  };
}

function endless(share: number): number {
  return share < 0.5 ? -ENDLESS_MM : ENDLESS_MM;
}

/** Every second column of a half drop lies half a repeat lower. */
function dropMm({ match, repeatYMm }: Motif, column: number): number {
  return match === "half-drop" && Math.abs(column % 2) === 1 ? repeatYMm / 2 : 0;
}

/** Numbers of the repeats between two places. */
function stepsOver(from: number, to: number, origin: number, step: number): number[] {
  const first = Math.floor((from - origin) / step);
  const count = Math.max(1, Math.ceil((to - origin) / step) - first);
  return Array.from({ length: count }, (_, k) => first + k);
}

function clothArea(colour: string, points: readonly Point[]): ClothArea {
  const box = {
    left: Number.POSITIVE_INFINITY,
    right: Number.NEGATIVE_INFINITY,
    top: Number.POSITIVE_INFINITY,
    bottom: Number.NEGATIVE_INFINITY,
  };
  for (const [x, y] of points) {
    if (x < box.left) box.left = x;
    if (x > box.right) box.right = x;
    if (y < box.top) box.top = y;
    if (y > box.bottom) box.bottom = y;
  }
  return { colour, points, box };
}

function overlaps(a: ClothBox, b: ClothBox): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function lozengeRepeat(colour: string): PrintedRepeat {
  const points: Point[] = [
    [0.5, 0.5 - LOZENGE],
    [0.5 + LOZENGE, 0.5],
    [0.5, 0.5 + LOZENGE],
    [0.5 - LOZENGE, 0.5],
  ];
  return { ground: colour, areas: [{ colour: darkerDye(colour, DARKER), points }] };
}

/** A lozenge in the middle of the repeat, the cloth’s own colour round it, by shares of the repeat. */
export function lozenge(colour: string): (x: number, y: number) => string {
  const dark = darkerDye(colour, DARKER);
  return (x, y) => (Math.abs(x - 0.5) + Math.abs(y - 0.5) < LOZENGE ? dark : colour);
}
