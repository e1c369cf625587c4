import type { UnitChoice } from "../../units/index.ts";
import { lengthText, MM_PER_INCH } from "../../units/index.ts";
import { pt } from "../paper.ts";
import type { Pen } from "../pen.ts";
import { painted, type TextStyle, TYPE } from "../type-scale.ts";
import { TEST_LINE_IN, TEST_SQUARE_MM } from "./strip-page.ts";
import type { Strip, StripMark, Tile } from "./tile-strip.ts";

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

/** Marks nearer than this have their words side by side, mm. */
const CLOSE_MM = 8;
/** A mark nearer to an end of its piece has both lines of words on the other side, mm. */
const WORDS_MM = 6;

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
  drawRuler(pen, tile, place, units);
  drawJoins(pen, strip, tile, place, units);
  drawMarks(pen, tile, place);
}

function drawKey(pen: Pen, strip: Strip, tile: Tile, { x }: TilePosition, top: number): void {
  pen.text(tile.key, x, top - 5, KEY);
  const beside = x + pen.widthOf(tile.key, KEY) + 4;
  pen.text(strip.name, beside, top - 11.5, TINY);
  pen.text(`${tile.index} of ${tile.of}`, beside, top - 5, TINY);
}

/** A ruler along the left edge at absolute positions, to check print and joins by. */
function drawRuler(pen: Pen, tile: Tile, place: TilePosition, units: UnitChoice): void {
  const imperial = units.system === "imperial";
  const stepMm = imperial ? MM_PER_INCH / 4 : 5;
  const perLabel = imperial ? 4 : 10;
  const first = Math.ceil(tile.printedFromMm / stepMm - 1e-9);
  const last = Math.floor(tile.printedToMm / stepMm + 1e-9);
  for (let i = first; i <= last; i += 1) {
    const y = tileY(tile, place, i * stepMm);
    const whole = i % perLabel === 0;
    const long = whole ? RULER_PT : i % 2 === 0 ? 6 : 3.5;
    pen.line(place.x, y, place.x + long, y, TICK);
    if (whole && i !== 0 && tile.printedToMm - i * stepMm > LABEL_MM)
      pen.text(String((i / perLabel) * (imperial ? 1 : 5)), place.x + 3, y - 1.5, TINY);
  }
}

function drawJoins(pen: Pen, strip: Strip, tile: Tile, place: TilePosition, units: UnitChoice): void {
  const join = (atMm: number, other: string, above: boolean) => {
    const y = tileY(tile, place, atMm);
    const { x, width } = place;
    pen.line(x, y, x + width, y, JOIN);
    for (const at of [x + width * 0.3, x + width * 0.7]) overlapMark(pen, at, y);
    const words = `${other} at ${lengthText(atMm, units)}`;
    pen.text(words, x + width / 2, above ? y - 9 : y + 13, painted(TINY, "accent"), "middle");
  };
  if (tile.index > 1) join(tile.fromMm, `${strip.key}${tile.index - 1}`, false);
  if (tile.index < tile.of) join(tile.toMm, `${strip.key}${tile.index + 1}`, true);
}

/** A diamond cut in half by the join: both halves meet when the tiles lie right. */
function overlapMark(pen: Pen, x: number, y: number): void {
  const r = 5;
  const points: [number, number][] = [
    [x, y - r],
    [x + r, y],
    [x, y + r],
    [x - r, y],
    [x, y - r],
  ];
  pen.polyline(points, { paint: "accent", widthPt: 0.8 });
}

function drawMarks(pen: Pen, tile: Tile, place: TilePosition): void {
  tile.marks.forEach((mark, i) => {
    const y = tileY(tile, place, mark.atMm);
    const { x, width } = place;
    pen.line(x, y, x + width, y, mark.end === true ? { ...MARK, widthPt: 1.6 } : MARK);
    // In the overlap the line is enough: its words stand on the next piece.
    if (mark.atMm < tile.fromMm || mark.atMm > tile.toMm) return;
    const close = [tile.marks[i - 1], tile.marks[i + 1]].some(
      (other) => other !== undefined && Math.abs(other.atMm - mark.atMm) < CLOSE_MM,
    );
    drawWords(pen, mark, y, place, {
      side: close ? (i % 2 === 0 ? "left" : "right") : "whole",
      room: roomAt(tile, mark),
    });
  });
}

type Side = "left" | "right" | "whole";
type Room = "both" | "above" | "below";

/** Words keep inside their piece: above a mark at its lower end, below one at its upper end. */
function roomAt({ fromMm, toMm }: Tile, { atMm }: StripMark): Room {
  if (atMm - fromMm < WORDS_MM) return "above";
  return toMm - atMm < WORDS_MM ? "below" : "both";
}

function drawWords(
  pen: Pen,
  mark: StripMark,
  y: number,
  { x, width }: TilePosition,
  { side, room }: { side: Side; room: Room },
): void {
  const whole = side === "whole";
  const share = whole ? 0.5 : side === "left" ? 0.25 : 0.77;
  const middle = x + RULER_PT + (width - RULER_PT) * share;
  const style = (base: TextStyle): TextStyle => (whole ? base : { ...base, sizePt: 5.5, leadingPt: 7 });
  const [name, at] = [style(NAME), style(PLACE)];
  const over = y - 3;
  const under = y + at.sizePt + 0.5;
  const nameY = room === "both" ? over : room === "above" ? over - at.leadingPt : under;
  const atY = room === "both" ? under : room === "above" ? over : under + at.leadingPt;
  pen.text(mark.name, middle, nameY, name, "middle");
  pen.text(mark.text, middle, atY, at, "middle");
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
