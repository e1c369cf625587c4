import type { UnitChoice } from "../../units/index.ts";
import { lengthText, MM_PER_INCH } from "../../units/index.ts";
import { pt } from "../typeset/paper.ts";
import type { Pen } from "../typeset/pen.ts";
import { painted, type TextStyle, TYPE } from "../typeset/type-scale.ts";
import { type BoxOnPage, placeWords, type WordRoom } from "./place-words.ts";
import { TEST_LINE_IN, TEST_SQUARE_MM } from "./strip-page.ts";
import type { Strip, Tile } from "./tile-strip.ts";

const EDGE = { paint: "ink", widthPt: 0.6, dashPt: [5, 3] } as const;
const JOIN = { paint: "accent", widthPt: 0.8, dashPt: [7, 2, 1.5, 2] } as const;
const MARK = { paint: "ink", widthPt: 0.9 } as const;
const TICK = { paint: "pencil", widthPt: 0.4 } as const;
const NAME: TextStyle = { face: "semibold", sizePt: 8, leadingPt: 10, paint: "ink" };
const PLACE: TextStyle = { face: "regular", sizePt: 8, leadingPt: 10, paint: "ink" };
const TINY: TextStyle = { face: "regular", sizePt: 6, leadingPt: 7.5, paint: "pencil" };
const KEY: TextStyle = { face: "semibold", sizePt: 14, leadingPt: 16, paint: "ink" };
/** Room that the ruler takes at the left edge, pt. */
const RULER_PT = 9;

/** A figure of the ruler needs so much room over its tick, mm. */
const LABEL_MM = 3;

/** A slope of 3 in 4. */
const SLOPE = { cos: 0.8, sin: 0.6 };

/** A tile at its place: `x` its left edge, `bottom` where the lowest printed position lies, pt. */
export interface TilePosition {
  x: number;
  width: number;
  bottom: number;
}

/** Height on the page of a position on the strip: positions grow upwards. */
function tileY(tile: Tile, place: TilePosition, atMm: number): number {
  return place.bottom - pt(atMm - tile.printedFromMm);
}

export function drawTile(pen: Pen, strip: Strip, tile: Tile, place: TilePosition, units: UnitChoice): void {
  const top = tileY(tile, place, tile.printedToMm);
  const { x, width, bottom } = place;
  pen.line(x, top, x, bottom, EDGE);
  pen.line(x + width, top, x + width, bottom, EDGE);
  drawKey(pen, strip, tile, place, top);
  const ruler = rulerMarks(tile, place, units);
  drawRuler(pen, ruler, place);
  drawJoins(pen, strip, tile, place, units);
  const joins = joinWords(strip, tile, place, units);
  drawMarks(pen, tile, place, {
    taken: [...joins.map((one) => boxOfJoin(pen, one)), ...figureBoxes(pen, ruler, place)],
    joins: joins.flatMap(({ y }) => joinBoxes(y, place)),
  });
}

function drawKey(pen: Pen, strip: Strip, tile: Tile, { x }: TilePosition, top: number): void {
  pen.text(tile.key, x, top - 5, KEY);
  const beside = x + pen.widthOf(tile.key, KEY) + 4;
  pen.text(strip.name, beside, top - 11.5, TINY);
  pen.text(`${tile.index} of ${tile.of}`, beside, top - 5, TINY);
}

interface RulerMark {
  y: number;
  /** Of its tick, pt. */
  long: number;
  figure?: string;
}

/**
 * A ruler along the left edge at absolute positions, to check print and joins by. Its first figure clear of a join has
 * the unit; one that a mark or a join would strike through is left out.
 */
function rulerMarks(tile: Tile, place: TilePosition, units: UnitChoice): RulerMark[] {
  const imperial = units.system === "imperial";
  const stepMm = imperial ? MM_PER_INCH / 4 : 5;
  const perLabel = imperial ? 4 : 10;
  const first = Math.ceil(tile.printedFromMm / stepMm - 1e-9);
  const last = Math.floor(tile.printedToMm / stepMm + 1e-9);
  const lines = [...tile.marks.map(({ atMm }) => atMm), tile.fromMm, tile.toMm];
  const isStruck = (atMm: number) => lines.some((lineMm) => lineMm > atMm + 0.2 && lineMm < atMm + LABEL_MM);
  let said = false;
  return Array.from({ length: last - first + 1 }, (_, k): RulerMark => {
    const i = first + k;
    const whole = i % perLabel === 0;
    const long = whole ? RULER_PT : i % 2 === 0 ? 6 : 3.5;
    const y = tileY(tile, place, i * stepMm);
    const atMm = i * stepMm;
    if (!whole || i === 0 || tile.printedToMm - atMm <= LABEL_MM || isStruck(atMm)) return { y, long };
    const count = String((i / perLabel) * (imperial ? 1 : 5));
    // Beside a sign of a join there is no room for the unit.
    const isAtJoin = [tile.fromMm, tile.toMm].some((joinMm) => Math.abs(joinMm - atMm) < LABEL_MM);
    const figure = said || isAtJoin ? count : `${count} ${imperial ? "in" : "cm"}`;
    said ||= !isAtJoin;
    return { y, long, figure };
  });
}

/** Figures of the ruler stand so far from the edge and over their tick, pt. */
const FIGURE_X = 3;
const FIGURE_UP = 1.5;

function drawRuler(pen: Pen, marks: readonly RulerMark[], { x }: TilePosition): void {
  for (const { y, long, figure } of marks) {
    pen.line(x, y, x + long, y, TICK);
    if (figure !== undefined) pen.text(figure, x + FIGURE_X, y - FIGURE_UP, TINY);
  }
}

function figureBoxes(pen: Pen, marks: readonly RulerMark[], { x }: TilePosition): BoxOnPage[] {
  return marks.flatMap(({ y, figure }): BoxOnPage[] => {
    if (figure === undefined) return [];
    const left = x + FIGURE_X;
    const bottom = y - FIGURE_UP;
    return [
      { left, right: left + pen.widthOf(figure, TINY) + 1, top: bottom - TINY.sizePt, bottom: bottom + 1 },
    ];
  });
}

interface JoinWords {
  text: string;
  y: number;
  x: number;
  baseline: number;
}

/** Where a piece meets its neighbours, and what is said there. */
function joinWords(strip: Strip, tile: Tile, place: TilePosition, units: UnitChoice): JoinWords[] {
  const join = (atMm: number, other: string, above: boolean): JoinWords => {
    const y = tileY(tile, place, atMm);
    const text = `${other} at ${lengthText(atMm, units)}`;
    return { text, y, x: place.x + place.width / 2, baseline: above ? y - 9 : y + 13 };
  };
  return [
    ...(tile.index > 1 ? [join(tile.fromMm, `${strip.key}${tile.index - 1}`, false)] : []),
    ...(tile.index < tile.of ? [join(tile.toMm, `${strip.key}${tile.index + 1}`, true)] : []),
  ];
}

function boxOfJoin(pen: Pen, { text, x, baseline }: JoinWords): BoxOnPage {
  const half = pen.widthOf(text, TINY) / 2;
  return { left: x - half, right: x + half, top: baseline - TINY.sizePt, bottom: baseline + 1.5 };
}

function drawJoins(pen: Pen, strip: Strip, tile: Tile, place: TilePosition, units: UnitChoice): void {
  const { x, width } = place;
  for (const { text, y, x: middle, baseline } of joinWords(strip, tile, place, units)) {
    pen.line(x, y, x + width, y, JOIN);
    for (const at of SIGN_SHARES) overlapMark(pen, x + width * at, y);
    pen.text(text, middle, baseline, painted(TINY, "accent"), "middle");
  }
}

/** Where in the width of a piece its signs lie, and half of their height, pt. */
const SIGN_SHARES = [0.3, 0.7] as const;
const SIGN_PT = 5;

/** A join's line, and each of its signs. */
function joinBoxes(y: number, { x, width }: TilePosition): BoxOnPage[] {
  const signs = SIGN_SHARES.map((at) => x + width * at).map((middle) => ({
    left: middle - SIGN_PT,
    right: middle + SIGN_PT,
    top: y - SIGN_PT,
    bottom: y + SIGN_PT,
  }));
  return [{ left: x, right: x + width, top: y - 0.5, bottom: y + 0.5 }, ...signs];
}

/** A diamond cut in half by the join: both halves meet when the tiles lie right. */
function overlapMark(pen: Pen, x: number, y: number): void {
  const r = SIGN_PT;
  const points: [number, number][] = [
    [x, y - r],
    [x + r, y],
    [x, y + r],
    [x - r, y],
    [x, y - r],
  ];
  pen.polyline(points, { paint: "accent", widthPt: 0.8 });
}

/** Marks with their words, which keep clear of what is taken and of the joins. */
function drawMarks(
  pen: Pen,
  tile: Tile,
  place: TilePosition,
  clear: Pick<WordRoom, "taken" | "joins">,
): void {
  const { x, width } = place;
  for (const mark of tile.marks) {
    const y = tileY(tile, place, mark.atMm);
    pen.line(x, y, x + width, y, mark.end === true ? { ...MARK, widthPt: 1.6 } : MARK);
  }
  // In the overlap the line is enough: its words stand on the next piece.
  const named = tile.marks.filter(({ atMm }) => atMm >= tile.fromMm && atMm <= tile.toMm);
  const words = placeWords(
    named.map(({ atMm, name, text }) => ({ y: tileY(tile, place, atMm), name, text })),
    {
      inside: {
        left: x + RULER_PT + 1,
        right: x + width - 1,
        top: tileY(tile, place, tile.printedToMm),
        bottom: place.bottom,
      },
      ...clear,
      widthOf: (text, sizePt, strong) => pen.widthOf(text, { ...(strong ? NAME : PLACE), sizePt }),
    },
  );
  for (const { text, strong, x: middle, baseline, sizePt } of words)
    pen.text(text, middle, baseline, { ...(strong ? NAME : PLACE), sizePt }, "middle");
}

/** A square of 100 mm with a line of 4 in across it: measured before anything is marked. Top left corner at (x, y). */
export function drawTestSquare(pen: Pen, x: number, y: number): void {
  const side = pt(TEST_SQUARE_MM);
  const line = { paint: "ink", widthPt: 0.8 } as const;
  pen.box(x, y, side, side, line);
  for (let i = 1; i < TEST_SQUARE_MM / 10; i += 1) {
    const tick = i === 5 ? 8 : 5;
    pen.line(x + pt(10 * i), y + side, x + pt(10 * i), y + side - tick, TICK);
    pen.line(x, y + pt(10 * i), x + tick, y + pt(10 * i), TICK);
  }
  const inch = pt(MM_PER_INCH);
  // Four inches are longer than the square is wide: the line stands on its slope.
  const inchesX = x + side / 2 - (TEST_LINE_IN / 2) * inch * SLOPE.cos;
  const inchesY = y + side / 2 + (TEST_LINE_IN / 2) * inch * SLOPE.sin;
  const at = (inches: number): [number, number] => [
    inchesX + inches * inch * SLOPE.cos,
    inchesY - inches * inch * SLOPE.sin,
  ];
  pen.polyline([at(0), at(TEST_LINE_IN)], line);
  for (let i = 0; i <= TEST_LINE_IN; i += 1) {
    const [tx, ty] = at(i);
    const [dx, dy] = [5 * SLOPE.sin, 5 * SLOPE.cos];
    pen.line(tx - dx, ty - dy, tx + dx, ty + dy, MARK);
  }
  pen.text("100 mm", x + side / 2, y + side - 12, TYPE.label, "middle");
  pen.text("100 mm", x + 12, y + side / 2 + 3, TYPE.label);
  const [lx, ly] = at(TEST_LINE_IN * 0.62);
  pen.text("4 in", lx + 9, ly + 9, TYPE.label);
}
