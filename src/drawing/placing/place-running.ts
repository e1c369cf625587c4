import type { Dimension, Point } from "../model.ts";
import type { PlacedItem, PlacedText, Stroke } from "../placed.ts";
import { LOOKS, TICK_PEN } from "../style.ts";
import { lineOfText } from "./line-of-text.ts";
import {
  add,
  DIMENSION_TEXT_MM,
  type DimensionLine,
  dimensionLine,
  dimensionWords,
  extensionLines,
  OVERSHOOT_MM,
  path,
  tick,
} from "./place-dimension.ts";
import { commonOf, type Scaling } from "./scaling.ts";
import { spreadApart } from "./spread-apart.ts";
import { type TakenSpots, textBox } from "./text-box.ts";
import { textWidthEm } from "./text-width.ts";

const LINE_PEN: Stroke = LOOKS.dimension.stroke ?? TICK_PEN;
const ORIGIN_MM = 0.75;
const GAP_MM = 2.2;

interface Member {
  dimension: Dimension;
  line: DimensionLine;
}

/**
 * Superimposed running dimensions (ISO 129-1): one line, a ring at the common origin, and at each tick the
 * distance from the origin. Crowded words move apart a little; too many are thinned out evenly.
 */
export function placeRunning(group: readonly Dimension[], scaling: Scaling, taken: TakenSpots): PlacedItem[] {
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
    ...placeValues(members, k, taken),
  ];
}

interface Value {
  member: Member;
  /** Where its words stand along the line. */
  alongMm: number;
}

function placeValues(members: Member[], k: number, taken: TakenSpots): PlacedItem[] {
  const last = members.at(-1);
  if (last === undefined) return [];
  const upright = Math.abs(last.line.along[1]) > 0.9;
  const level = upright || fitsLevel(members, k);
  const pitchMm = DIMENSION_TEXT_MM * k * PITCH_EM;
  const values = level && !upright ? members.map(asItStands) : movedApart(members, pitchMm);
  return values.flatMap(({ member, alongMm }) => {
    const asideMm = alongMm - member.line.lengthMm;
    const text = writeValue(member, asideMm, { upright, level }, k);
    const box = textBox(text);
    if (!taken.isFree(box)) return [];
    taken.take(box);
    return Math.abs(asideMm) < 0.1 ? [text] : [jog(member, asideMm, k), text];
  });
}

const asItStands = (member: Member): Value => ({ member, alongMm: member.line.lengthMm });

/** Words this many ems apart do not touch. */
const PITCH_EM = 1.16;
/** Furthest that words may stand from their tick, in pitches. */
const MOST_ASIDE = 1.3;

/**
 * Moves crowded values apart along the line, each as little as it takes. Where that would part words from their
 * tick, every second, third … value is left out; the last one always stays.
 */
function movedApart(members: Member[], pitchMm: number): Value[] {
  for (let step = 1; step <= members.length; step += 1) {
    const kept = members.filter((_, i) => (members.length - 1 - i) % step === 0);
    const places = spreadApart(
      kept.map(({ line }) => line.lengthMm),
      pitchMm,
    );
    const values = kept.map((member, i): Value => ({ member, alongMm: places[i] ?? member.line.lengthMm }));
    const isNear = values.every(
      ({ member, alongMm }) => Math.abs(alongMm - member.line.lengthMm) <= MOST_ASIDE * pitchMm,
    );
    if (isNear) return values;
  }
  return members.slice(-1).map(asItStands);
}

/** A thin line from the tick to words that stand a little aside. */
function jog({ line }: Member, asideMm: number, k: number): PlacedItem {
  const foot = add(line.to, line.out, OVERSHOOT_MM * k);
  const head = add(add(line.to, line.out, (GAP_MM - 0.2) * k), line.along, asideMm);
  return path({ role: "dimension" }, [[foot, head]], LINE_PEN);
}

function fitsLevel(members: Member[], k: number): boolean {
  return members.every(({ dimension, line }, i) => {
    const next = members[i + 1];
    if (next === undefined) return true;
    const half = (textWidthEm(dimensionWords(dimension)) + textWidthEm(dimensionWords(next.dimension))) / 2;
    return half * DIMENSION_TEXT_MM * k + k <= next.line.lengthMm - line.lengthMm;
  });
}

function writeValue(
  { dimension, line }: Member,
  asideMm: number,
  { upright, level }: { upright: boolean; level: boolean },
  k: number,
): PlacedText {
  const at: Point = add(add(line.to, line.out, GAP_MM * k), line.along, asideMm);
  const base = { at, text: dimensionWords(dimension), sizeMm: DIMENSION_TEXT_MM * k };
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
