import type { Dimension, Point } from "./model.ts";
import {
  add,
  DIMENSION_TEXT_MM,
  type DimensionLine,
  dimensionLine,
  extensionLines,
  path,
  tick,
  wordsOf,
} from "./place-dimension.ts";
import { commonOf, lineOfText, type Scaling } from "./place-text.ts";
import type { PlacedItem, PlacedText, Stroke } from "./placed.ts";
import { LOOKS, TICK_PEN } from "./style.ts";
import { type TakenPlaces, textBox } from "./text-box.ts";
import { textWidthEm } from "./text-width.ts";

const LINE_PEN: Stroke = LOOKS.dimension.stroke ?? TICK_PEN;
const ORIGIN_MM = 0.75;
const GAP_MM = 1.9;

interface Member {
  dimension: Dimension;
  line: DimensionLine;
}

/**
 * Superimposed running dimensions (ISO 129-1): one line, a ring at the common origin, and at each tick the
 * distance from the origin. Words that would lie on others are left out from the middle, never at the far end.
 */
export function placeRunning(
  group: readonly Dimension[],
  scaling: Scaling,
  taken: TakenPlaces,
): PlacedItem[] {
  const k = scaling.textScale;
  const members = group
    .map((dimension): Member => ({ dimension, line: dimensionLine(dimension, scaling) }))
    .sort((a, b) => a.line.lengthMm - b.line.lengthMm);
  const first = members[0];
  const last = members.at(-1);
  if (first === undefined || last === undefined) return [];
  const common = commonOf(last.dimension);
  const shared = { role: common.role };
  const feet = members.flatMap(({ dimension, line }, i) =>
    extensionLines(dimension, line, k).slice(i === 0 ? 0 : 1),
  );
  return [
    path(shared, [...feet, [last.line.from, last.line.to]], LINE_PEN),
    path(
      shared,
      members.map(({ line }) => tick(line.to, line.along, k)),
      TICK_PEN,
    ),
    {
      kind: "circle",
      ...shared,
      centre: last.line.from,
      radiusMm: ORIGIN_MM * k,
      fill: "paper",
      stroke: TICK_PEN,
    },
    ...placeValues(members, last, k, taken),
  ];
}

function placeValues(members: Member[], last: Member, k: number, taken: TakenPlaces): PlacedText[] {
  const upright = Math.abs(last.line.along[1]) > 0.9;
  const level = upright || fitsLevel(members, k);
  const values: PlacedText[] = [];
  const inOrder = [last, ...members.filter((member) => member !== last)];
  for (const member of inOrder) {
    const text = writeValue(member, upright, level, k);
    const box = textBox(text);
    if (!taken.isFree(box)) continue;
    taken.take(box);
    values.push(text);
  }
  return values;
}

function fitsLevel(members: Member[], k: number): boolean {
  return members.every(({ dimension, line }, i) => {
    const next = members[i + 1];
    if (next === undefined) return true;
    const half = (textWidthEm(wordsOf(dimension)) + textWidthEm(wordsOf(next.dimension))) / 2;
    return half * DIMENSION_TEXT_MM * k + k <= next.line.lengthMm - line.lengthMm;
  });
}

function writeValue({ dimension, line }: Member, upright: boolean, level: boolean, k: number): PlacedText {
  const at: Point = add(line.to, line.out, GAP_MM * k);
  const base = { at, text: wordsOf(dimension), sizeMm: DIMENSION_TEXT_MM * k };
  const common = commonOf(dimension);
  if (upright) {
    const anchor = line.out[0] < 0 ? "end" : "start";
    return lineOfText({ ...base, anchor, baseline: "middle", angleDeg: 0 }, common);
  }
  const above = line.out[1] < 0;
  if (level) {
    const baseline = above ? "bottom" : "top";
    return lineOfText({ ...base, anchor: "middle", baseline, angleDeg: 0 }, common);
  }
  return lineOfText({ ...base, anchor: above ? "start" : "end", baseline: "middle", angleDeg: -90 }, common);
}
