import type { CordLockLift, CordRun } from "../../shade-plan/index.ts";
import type { Point, Primitive } from "../model.ts";
import type { LockSheetInput } from "./lift-input.ts";
import { type LockWindow, outwards } from "./lock-window.ts";
import { callout, line, note, rect } from "./shapes.ts";

const SHEET_MM = 1.5;
/** Rollers apart leave so many cords' thicknesses between them. */
const APART_CORDS = 2;
/** How far the toothed roller moves up its slope, as a share of its radius, until it meets the smooth one. */
const SLOPE = 0.5;
const TEETH = 14;
const TOOTH_SHARE = 0.88;
const ARC_STEPS = 10;
/** Tail drawn below the housing, and the shank of an eye in the board. */
const TAIL_MM = 12;
const SHANK_MM = 10;
const CROWN_MM = 2.4;
const STUB_MM = 1.2;

/** From along the board and down from its underside, both from the middle of the lock, to the page. */
type ToPage = (alongMm: number, downMm: number) => Point;

/** Places of both rollers: as the lock sits and the cords run, or upside down. */
interface Rollers {
  smooth: Point;
  toothed: Point;
  radiusMm: number;
}

/** Across the rollers, seen from the room: a cord comes in level, turns over a roller and goes down between the two. */
export function drawLockSection(input: LockSheetInput, window: LockWindow, undersideY: number): Primitive[] {
  const { board, lift } = input.shade;
  const toPage: ToPage = (along, down) => [along, undersideY + down];
  const rollers = rollersApart(lift);
  const { fromMm, toMm } = window;
  return [
    rect(
      "board",
      { x: fromMm, y: undersideY - board.thicknessMm, width: toMm - fromMm, height: board.thicknessMm },
      { part: "board" },
    ),
    ...window.eyes.flatMap((eye) => eyeInSection(lift, eye.alongMm, eye.number, toPage)),
    ...housing(lift, toPage),
    ...wire(lift, toPage),
    ...drawRollers(lift, rollers, toPage),
    ...nearestCords(lift).flatMap((cord) => cordThrough(lift, cord, window, rollers, toPage)),
    note([0, undersideY - board.thicknessMm], "section: rollers apart", { shiftPaperMm: [0, -3] }),
    note([-outwards(lift) * (lift.housingLengthMm / 2), undersideY - board.thicknessMm / 2], "board", {
      ground: "board",
      yields: true,
    }),
    ...sectionNames(lift, rollers, toPage),
  ];
}

/** The lock alone in the hand, its underside up: the toothed roller has slid against the smooth one. */
export function drawLockUpsideDown(input: LockSheetInput, [middleX, topY]: Point): Primitive[] {
  const { lift } = input.shade;
  const toPage: ToPage = (along, down) => [middleX + along, topY + lift.housingHeightMm - down];
  return [
    ...housing(lift, toPage),
    ...wire(lift, toPage),
    ...drawRollers(lift, rollersTogether(lift), toPage),
    note(toPage(0, 0), "upside down: together", { shiftPaperMm: [0, 3.4] }),
  ];
}

function rollersApart(lift: CordLockLift): Rollers {
  const { rollerMm, axisMm } = lift.entry;
  const radiusMm = rollerMm / 2;
  const half = radiusMm + (APART_CORDS * lift.cordDiameterMm) / 2;
  const way = outwards(lift);
  return { smooth: [-way * half, axisMm], toothed: [way * half, axisMm], radiusMm };
}

/** It slides up its slope, towards the board, until it meets the smooth one; upside down it falls there. */
function rollersTogether(lift: CordLockLift): Rollers {
  const { smooth, radiusMm } = rollersApart(lift);
  const up = SLOPE * radiusMm;
  const across = Math.sqrt(4 * radiusMm ** 2 - up ** 2);
  return { smooth, toothed: [smooth[0] + outwards(lift) * across, smooth[1] - up], radiusMm };
}

/** Top plate, and the ends with the openings that cords come in by. */
function housing(lift: CordLockLift, toPage: ToPage): Primitive[] {
  const { housingLengthMm: length, housingHeightMm: height, cordDiameterMm, entry } = lift;
  const half = length / 2;
  const room = Math.max(2.5, 2 * cordDiameterMm);
  const upper = Math.max(SHEET_MM, entry.lockLevelMm - room);
  const lower = Math.min(height, entry.lockLevelMm + room);
  const box = (from: number, to: number, top: number, bottom: number): Primitive[] =>
    bottom - top < 0.1
      ? []
      : [
          line("housing", [toPage(from, top), toPage(to, top), toPage(to, bottom), toPage(from, bottom)], {
            part: "lock",
            closed: true,
          }),
        ];
  return [
    ...box(-half, half, 0, SHEET_MM),
    ...[-1, 1].flatMap((side) => {
      const [from, to] = [side * half, side * (half - SHEET_MM)];
      return [...box(from, to, SHEET_MM, upper), ...box(from, to, lower, height)];
    }),
  ];
}

function drawRollers(
  lift: CordLockLift,
  { smooth, toothed, radiusMm }: Rollers,
  toPage: ToPage,
): Primitive[] {
  const apart = rollersApart(lift).toothed;
  const together = rollersTogether(lift).toothed;
  const teeth = Array.from({ length: 2 * TEETH }, (_, i): Point => {
    const angle = (Math.PI * i) / TEETH;
    const r = radiusMm * (i % 2 === 0 ? 1 : TOOTH_SHARE);
    return toPage(toothed[0] + outwards(lift) * r * Math.cos(angle), toothed[1] + r * Math.sin(angle));
  });
  return [
    { kind: "circle", role: "roller", centre: toPage(...smooth), radiusMm, part: "smooth-roller" },
    line("toothedRoller", teeth, { part: "toothed-roller", closed: true }),
    // The slope in the housing's sides along which its axle moves.
    line("hidden", [toPage(...apart), toPage(...together)], { part: "toothed-roller" }),
    {
      kind: "circle",
      role: "roller",
      centre: toPage(...smooth),
      radiusMm: radiusMm / 6,
      part: "smooth-roller",
    },
    {
      kind: "circle",
      role: "roller",
      centre: toPage(...toothed),
      radiusMm: radiusMm / 6,
      part: "toothed-roller",
    },
  ];
}

/** A wire bent like a staple round the rollers: its crown outwards, its cut ends on the other side. */
function wire(lift: CordLockLift, toPage: ToPage): Primitive[] {
  if (lift.dividerWires === 0) return [];
  const { rollerMm, axisMm } = lift.entry;
  const way = outwards(lift);
  const half = lift.housingLengthMm / 2;
  const upper = axisMm - rollerMm / 2 - lift.cordDiameterMm / 2;
  const lower = Math.min(axisMm + rollerMm / 2 + 1, lift.housingHeightMm - 1);
  const crown = half + CROWN_MM;
  const radius = Math.min(1.6, (lower - upper) / 4);
  const bend = (down: number, towards: number): Point[] =>
    Array.from({ length: 5 }, (_, i): Point => {
      const angle = (Math.PI / 2) * (i / 4);
      return toPage(
        way * (crown - radius + radius * Math.sin(angle)),
        down + towards * radius * (1 - Math.cos(angle)),
      );
    });
  const start = -way * (half + STUB_MM);
  return [
    line(
      "dividerWire",
      [toPage(start, upper), ...bend(upper, 1), ...bend(lower, -1).reverse(), toPage(start, lower)],
      { part: "wire-1" },
    ),
  ];
}

/** The ring stands across the board, so the section cuts its wire twice; its shank goes up into the wood. */
function eyeInSection(lift: CordLockLift, along: number, number: number, toPage: ToPage): Primitive[] {
  const part = `eye-${number}`;
  const d = lift.eyeDiameterMm;
  const wireMm = d / 5;
  const cut = (down: number): Primitive => ({
    kind: "circle",
    role: "eye",
    centre: toPage(along, down),
    radiusMm: wireMm / 2,
    part,
  });
  const side = (way: number) =>
    line(
      "eye",
      [toPage(along + (way * wireMm) / 2, wireMm / 2), toPage(along + (way * wireMm) / 2, d - wireMm / 2)],
      {
        part,
      },
    );
  const shank = Math.min(SHANK_MM, 1.2 * d);
  return [
    rect(
      "eye",
      {
        x: toPage(along, 0)[0] - wireMm / 4,
        y: toPage(0, -shank)[1],
        width: wireMm / 2,
        height: shank,
      },
      { part },
    ),
    side(-1),
    side(1),
    cut(wireMm / 2),
    cut(d - wireMm / 2),
  ];
}

/** One cord from each end: the one whose eye is nearest. */
function nearestCords({ cords, seat }: CordLockLift): CordRun[] {
  return (["left", "right"] as const).flatMap((side) => {
    const from = cords.filter(({ entersFrom }) => entersFrom === side);
    const away = ({ columnX }: CordRun) => Math.abs(columnX - seat.xMm);
    return from.length === 0 ? [] : [from.reduce((a, b) => (away(b) < away(a) ? b : a))];
  });
}

/** Up from its column or along the board, through its eye, over the roller on its side, and down between both. */
function cordThrough(
  lift: CordLockLift,
  cord: CordRun,
  window: LockWindow,
  { smooth, toothed, radiusMm }: Rollers,
  toPage: ToPage,
): Primitive[] {
  const { entry, cordDiameterMm, housingHeightMm } = lift;
  const way = cord.entersFrom === "left" ? -1 : 1;
  const roller = way === Math.sign(smooth[0]) ? smooth : toothed;
  const r = radiusMm + cordDiameterMm / 2;
  const eye: Point = [window.along(cord.columnX), entry.eyeLevelMm];
  const touch = touchesAt(roller, r, eye, way);
  const onRoller = (angle: number): Point => [
    roller[0] - way * r * Math.cos(angle),
    roller[1] + r * Math.sin(angle),
  ];
  const ref = { cord: cord.number, part: `cord-${cord.number}` };
  // It comes up on the far side of its ring and lies on the lower edge of the opening.
  const round = lift.eyeDiameterMm / 10 + cordDiameterMm / 2;
  const overWire = Array.from({ length: ARC_STEPS + 1 }, (_, i): Point => {
    const angle = ((Math.PI / 2) * i) / ARC_STEPS;
    return [eye[0] + way * round * Math.cos(angle), eye[1] + round * (1 - Math.sin(angle))];
  });
  const start: Point[] =
    eye[0] >= window.fromMm && eye[0] <= window.toMm
      ? [[eye[0] + way * round, Math.max(housingHeightMm, lift.eyeDiameterMm) + TAIL_MM], ...overWire]
      : [atEdge(eye, onRoller(touch), way < 0 ? window.fromMm : window.toMm)];
  const arc = Array.from({ length: ARC_STEPS + 1 }, (_, i) =>
    onRoller(touch + ((2 * Math.PI - touch) * i) / ARC_STEPS),
  );
  const end: Point = [roller[0] - way * r, housingHeightMm + TAIL_MM];
  return [
    line(
      "cord",
      [...start, ...arc, end].map(([along, down]) => toPage(along, down)),
      ref,
    ),
  ];
}

/**
 * Angle at which a straight line from the eye touches a circle over the roller, rad: from the side towards the middle of
 * the lock round by below, so that straight up is 3π/2 and the cord leaves at 2π.
 */
function touchesAt([x, y]: Point, r: number, from: Point, way: number): number {
  const [u, v] = [-way * (from[0] - x), from[1] - y];
  const away = Math.hypot(u, v);
  const eye = Math.atan2(v, u);
  return (eye < 0 ? eye + 2 * Math.PI : eye) + Math.acos(Math.min(1, r / away));
}

/** The place at the edge of what is shown of a line that comes from farther away. */
function atEdge(from: Point, to: Point, edge: number): Point {
  const share = (edge - from[0]) / (to[0] - from[0] || 1);
  return [edge, from[1] + share * (to[1] - from[1])];
}

function sectionNames(
  lift: CordLockLift,
  { smooth, toothed, radiusMm }: Rollers,
  toPage: ToPage,
): Primitive[] {
  const way = outwards(lift);
  const half = lift.housingLengthMm / 2;
  const lower = toPage(0, lift.housingHeightMm)[1];
  const below = (roller: Point): Point => [toPage(...roller)[0], toPage(0, roller[1] + radiusMm * 0.6)[1]];
  const named = (at: Point, text: string, offset: Point, part: string): Primitive =>
    callout(at, text, offset, { part, yields: true });
  return [
    named(below(toothed), "toothed roller", [way * 12, 17], "toothed-roller"),
    named(below(smooth), "smooth roller", [-way * 12, 17], "smooth-roller"),
    ...(lift.dividerWires === 0
      ? []
      : [
          named(
            [way * (half + CROWN_MM), lower - lift.housingHeightMm / 3],
            "smooth crown",
            [way * 7, 6],
            "wire-1",
          ),
          named(
            [-way * (half + STUB_MM), toPage(0, lift.entry.axisMm + lift.entry.rollerMm / 2 + 1)[1]],
            "cut ends",
            [-way * 7, 6],
            "wire-1",
          ),
        ]),
  ];
}
