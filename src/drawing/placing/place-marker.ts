import { CASING_MM, CORE_MM, cordStyle } from "../cord-style.ts";
import type { Marker, Point } from "../model.ts";
import type { PlacedItem, PlacedText } from "../placed.ts";
import { LOOKS } from "../style.ts";
import { lineOfText } from "./line-of-text.ts";
import { commonOf, type Scaling, toPaper } from "./scaling.ts";
import { spreadApart } from "./spread-apart.ts";
import type { TakenSpots } from "./text-box.ts";

const TAG_TEXT_SHARE = 0.72;

/** Between two tags of a stack, in their diameters. */
const STACK_PITCH = 1.14;

/** Tags of one stack, a row or a column: each beside its point, or as near to it as its neighbours allow. */
export function placeStack(markers: readonly Marker[], scaling: Scaling, taken: TakenSpots): PlacedItem[] {
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
    return [...(isBeside ? [] : [leaderTo(marker, point, at)]), ...placeMarker(marker, scaling, taken, at)];
  });
}

/** A thin line from a point to the tag that stands away from it. */
export function leaderTo(marker: Marker, point: Point, at: Point): PlacedItem {
  return {
    kind: "path",
    ...commonOf(marker),
    role: "leader",
    lines: [[point, at]],
    closed: false,
    stroke: LOOKS.leader.stroke ?? { paint: "pencil", widthMm: 0.13 },
  };
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
  taken: TakenSpots,
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
function placeTag(marker: Marker, centre: Point, radiusMm: number, taken: TakenSpots): PlacedItem[] {
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
