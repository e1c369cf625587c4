import { CASING_MM, CORE_MM, cordStyle } from "./cord-style.ts";
import type { Callout, Marker, Point, Role, Text } from "./model.ts";
import type { PlacedCommon, PlacedItem, PlacedText } from "./placed.ts";
import { spreadApart } from "./spread-apart.ts";
import { LOOKS } from "./style.ts";
import { type TakenPlaces, textBox } from "./text-box.ts";
import { ASCENT_EM, CAP_EM, DESCENT_EM, textWidthEm } from "./text-width.ts";

/** What placing needs to know: model to paper, and the factor on everything that is sized on paper. */
export interface Scaling {
  scale: number;
  textScale: number;
}

const HALO_EM = 0.16;
const BASELINE_EM = { top: ASCENT_EM, middle: CAP_EM / 2, bottom: -DESCENT_EM } as const;

export function toPaper(at: Point, { scale, textScale }: Scaling, shift: Point = [0, 0]): Point {
  return [at[0] * scale + shift[0] * textScale, at[1] * scale + shift[1] * textScale];
}

/** Ref fields, role and cord of a primitive, without empty ones. */
export function commonOf(from: PlacedCommon): PlacedCommon {
  const { role, cord, figure, field, part } = from;
  return {
    role,
    ...(cord === undefined ? {} : { cord }),
    ...(figure === undefined ? {} : { figure }),
    ...(field === undefined ? {} : { field }),
    ...(part === undefined ? {} : { part }),
  };
}

/** The same direction, never upside down. */
export function uprightDeg(angleDeg: number): number {
  const turned = ((((angleDeg + 90) % 180) + 180) % 180) - 90;
  return turned;
}

export interface LineOfText {
  at: Point;
  text: string;
  sizeMm: number;
  anchor: "start" | "middle" | "end";
  baseline: "top" | "middle" | "bottom";
  angleDeg: number;
  strong?: boolean;
  ground?: Role;
}

/** A line of text with its baseline worked out. `at` is already on paper. */
export function lineOfText(line: LineOfText, common: PlacedCommon): PlacedText {
  const { at, text, sizeMm, anchor, baseline, angleDeg, strong = false, ground } = line;
  const angle = (angleDeg * Math.PI) / 180;
  const down = BASELINE_EM[baseline] * sizeMm;
  return {
    kind: "text",
    ...common,
    at: [at[0] - Math.sin(angle) * down, at[1] + Math.cos(angle) * down],
    text,
    sizeMm,
    anchor,
    angleDeg,
    strong,
    paint: LOOKS[common.role].text,
    widthMm: textWidthEm(text) * sizeMm,
    haloMm: HALO_EM * sizeMm,
    haloPaint: ground === undefined ? "paper" : (LOOKS[ground].fill ?? "paper"),
  };
}

/** The smallest share of its size that a text may shrink to before it is left out. */
const SMALLEST_SHARE = 0.8;

/** A free text; nothing where its room is too small or where it yields to other words. */
export function placeText(text: Text, scaling: Scaling, taken: TakenPlaces): PlacedItem[] {
  const sizeMm = text.paperMm * scaling.textScale;
  const line: LineOfText = {
    at: toPaper(text.at, scaling, text.shiftPaperMm),
    text: text.text,
    sizeMm,
    anchor: text.anchor ?? "start",
    baseline: text.baseline ?? "middle",
    angleDeg: text.angleDeg ?? 0,
    ...(text.strong === undefined ? {} : { strong: text.strong }),
    ...(text.ground === undefined ? {} : { ground: text.ground }),
  };
  const fitted = text.roomMm === undefined ? line : fitToRoom(line, text.roomMm, scaling.scale);
  if (fitted === undefined) return [];
  const placed = lineOfText(fitted, commonOf(text));
  const box = textBox(placed);
  if (text.yields === true && !taken.isFree(box)) return [];
  taken.take(box);
  return [placed];
}

function fitToRoom(
  line: LineOfText,
  roomMm: readonly [number, number],
  scale: number,
): LineOfText | undefined {
  const across = roomMm[0] * scale;
  const down = roomMm[1] * scale;
  const width = textWidthEm(line.text) * line.sizeMm;
  const height = (ASCENT_EM + DESCENT_EM) * line.sizeMm;
  const level = Math.min(across / width, down / height, 1);
  if (level >= SMALLEST_SHARE) return { ...line, sizeMm: line.sizeMm * level };
  const turned = Math.min(across / height, down / width, 1);
  if (turned >= SMALLEST_SHARE) return { ...line, sizeMm: line.sizeMm * turned, angleDeg: -90 };
  return undefined;
}

/** Places to try for a callout, mm beyond the wished one. */
const STEPS = [0, -4, 4, -8, 8, -12, 12];

export function placeCallout(callout: Callout, scaling: Scaling, taken: TakenPlaces): PlacedItem[] {
  const common = commonOf(callout);
  const shift = callout.shiftPaperMm ?? [0, 0];
  const from = toPaper(callout.at, scaling, shift);
  const sizeMm = callout.paperMm * scaling.textScale;
  const [dx, dy] = callout.offsetPaperMm;
  const right = dx >= 0;
  const tryAt = (step: number): { end: Point; text: PlacedText } => {
    const end = toPaper(callout.at, scaling, [dx + shift[0], dy + step + shift[1]]);
    const at: Point = [end[0] + (right ? 0.8 : -0.8) * scaling.textScale, end[1]];
    const anchor = right ? "start" : "end";
    return {
      end,
      text: lineOfText(
        {
          at,
          text: callout.text,
          sizeMm,
          anchor,
          baseline: "middle",
          angleDeg: 0,
          ground: callout.ground ?? "label",
        },
        common,
      ),
    };
  };
  const tries = STEPS.map((step) => tryAt(step));
  const free = tries.find(({ text }) => taken.isFree(textBox(text))) ?? tries[0];
  if (free === undefined) return [];
  taken.take(textBox(free.text));
  const leader = LOOKS.leader.stroke;
  return [
    {
      kind: "path",
      ...common,
      role: "leader",
      lines: [[from, free.end]],
      closed: false,
      ...(leader === undefined ? {} : { stroke: leader }),
    },
    {
      kind: "circle",
      ...common,
      role: "leader",
      centre: from,
      radiusMm: 0.45 * scaling.textScale,
      fill: "pencil",
    },
    free.text,
  ];
}

const TAG_TEXT_SHARE = 0.72;

/** Between two tags of a stack, in their diameters. */
const STACK_PITCH = 1.14;

/** Tags of one stack, a row or a column: each beside its point, or as near to it as its neighbours allow. */
export function placeStack(markers: readonly Marker[], scaling: Scaling, taken: TakenPlaces): PlacedItem[] {
  const axis = longerAxis(markers);
  const members = markers
    .map((marker) => ({ marker, centre: toPaper(marker.at, scaling, marker.shiftPaperMm) }))
    .sort((a, b) => a.centre[axis] - b.centre[axis]);
  const largest = Math.max(...markers.map((marker) => marker.paperMm)) * scaling.textScale;
  const places = spreadApart(
    members.map(({ centre }) => centre[axis]),
    largest * STACK_PITCH,
  );
  return members.flatMap(({ marker, centre }, i) => {
    const place = places[i] ?? centre[axis];
    const at: Point = axis === 0 ? [place, centre[1]] : [centre[0], place];
    const point = toPaper(marker.at, scaling);
    const isBeside = Math.hypot(at[0] - point[0], at[1] - point[1]) < TIED_FROM * largest;
    const leader: PlacedItem = {
      kind: "path",
      ...commonOf(marker),
      role: "leader",
      lines: [[point, at]],
      closed: false,
      stroke: LOOKS.leader.stroke ?? { paint: "pencil", widthMm: 0.13 },
    };
    return [...(isBeside ? [] : [leader]), ...placeMarker(marker, scaling, taken, at)];
  });
}

/** A tag this many of its diameters away from its point is tied to it. */
const TIED_FROM = 1.15;

/** 0 for a row, 1 for a column. */
function longerAxis(markers: readonly Marker[]): 0 | 1 {
  const extent = (axis: 0 | 1) => {
    const places = markers.map((marker) => marker.at[axis]);
    return Math.max(...places) - Math.min(...places);
  };
  return extent(0) > extent(1) ? 0 : 1;
}

export function placeMarker(
  marker: Marker,
  scaling: Scaling,
  taken: TakenPlaces,
  centre: Point = toPaper(marker.at, scaling, marker.shiftPaperMm),
): PlacedItem[] {
  const common = commonOf(marker);
  // Marks keep their size; only those with words in them grow with the letters.
  const radiusMm = (marker.paperMm / 2) * (marker.shape === "tag" ? scaling.textScale : 1);
  const { stroke = { paint: "ink", widthMm: 0.25 }, text } = LOOKS[marker.role];
  switch (marker.shape) {
    case "dot":
      return [{ kind: "circle", ...common, centre, radiusMm, fill: text }];
    case "ring":
      return [{ kind: "circle", ...common, centre, radiusMm, fill: "paper", stroke }];
    case "cross":
      return [{ kind: "path", ...common, lines: cross(centre, radiusMm), closed: false, stroke }];
    case "triangle":
      return [{ kind: "path", ...common, lines: [triangle(centre, radiusMm)], closed: true, fill: text }];
    case "tag":
      return placeTag(marker, centre, radiusMm, taken);
  }
}

function cross([x, y]: Point, r: number): Point[][] {
  return [
    [
      [x - r, y - r],
      [x + r, y + r],
    ],
    [
      [x - r, y + r],
      [x + r, y - r],
    ],
  ];
}

function triangle([x, y]: Point, r: number): Point[] {
  return [
    [x, y + r],
    [x - r * 0.87, y - r * 0.5],
    [x + r * 0.87, y - r * 0.5],
  ];
}

/** A number in a ring; a cord's ring has the cord's colour in an ink casing. */
function placeTag(marker: Marker, centre: Point, radiusMm: number, taken: TakenPlaces): PlacedItem[] {
  const common = commonOf(marker);
  const around = { left: centre[0] - radiusMm, top: centre[1] - radiusMm };
  taken.take({ ...around, right: centre[0] + radiusMm, bottom: centre[1] + radiusMm });
  const sizeMm = 2 * radiusMm * TAG_TEXT_SHARE;
  const text = lineOfText(
    {
      at: centre,
      text: marker.text ?? "",
      sizeMm,
      anchor: "middle",
      baseline: "middle",
      angleDeg: 0,
      strong: true,
    },
    common,
  );
  const { haloMm: _width, haloPaint: _paint, ...plain } = text;
  const ring = (widthMm: number, paint: PlacedText["paint"]): PlacedItem => ({
    kind: "circle",
    ...common,
    centre,
    radiusMm,
    fill: "paper",
    stroke: { paint, widthMm },
  });
  const rings =
    marker.cord === undefined
      ? [ring(LOOKS.ring.stroke?.widthMm ?? 0.25, "ink")]
      : [ring(CASING_MM, "ink"), ring(CORE_MM, tagPaint(marker.cord))];
  return [...rings, { ...plain, paint: "ink" }];
}

/** The core's colour; a cord of ink and paper keeps its ink, or its ring would vanish. */
function tagPaint(cord: number): PlacedText["paint"] {
  const { paint } = cordStyle(cord).core;
  return paint === "paper" ? "ink" : paint;
}
