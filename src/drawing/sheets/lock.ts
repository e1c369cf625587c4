import type { CordLockLift, CordRun } from "../../shade-plan/index.ts";
import { fineText, trimmed } from "../../units/index.ts";
import type { Drawing, Point, Primitive } from "../model.ts";
import { eyeBelow } from "./eye-below.ts";
import type { LockSheetInput } from "./lift-input.ts";
import { drawEndGap, GAP_TIMES } from "./lock-gap.ts";
import { drawLockSection, drawLockUpsideDown } from "./lock-section.ts";
import { type LockWindow, lockWindow, outwards } from "./lock-window.ts";
import { cordTag, dimensionOf, line, name, note, rect } from "./shapes.ts";

const WALL_OF_HOUSING_MM = 1.5;
const TEETH = 6;
/** From one view to the next. */
const APART_MM = 17;
/** The lock in the hand lies so far from the middle of the sheet, as a share of the housing's length. */
const IN_HAND = 0.35;
/** From the edge of what is shown to the cord numbers, mm on paper. */
const FAN_PAPER_MM = 9;

/** A wire's crown stands out of the housing, its cut ends hardly do. */
const CROWN_MM = 2.4;
const CUT_END_MM = 1.2;
const CROWN_WIRE_MM = 0.7;

type ToPage = (xMm: number, zMm: number) => Point;

/**
 * The lock, enlarged: from below with rollers, wires, numbered slots and every cord from the side it comes in; under it
 * the section across the rollers, the lock upside down, and the gap at a roller's end beside the cord.
 */
export function drawLockSheet(input: LockSheetInput): Drawing {
  const { shade } = input;
  const { lift } = shade;
  const { seat } = lift;
  // The middle of the housing is the origin; the room is up, since the wall's z grows towards it.
  const window = lockWindow(input);
  const toPage: ToPage = (xMm, zMm) => [window.along(xMm), seat.zMm - zMm];
  const deep = Math.max(lift.housingWidthMm, lift.eyeDiameterMm) / 2;
  const undersideY = deep + APART_MM + shade.board.thicknessMm;
  const lowestY = undersideY + lift.housingHeightMm + APART_MM;
  const way = outwards(lift);
  const inHandX = -way * lift.housingLengthMm * IN_HAND;
  return {
    id: "lock",
    title: "Lock and cords",
    caption: `Seen from below, left as seen from the room, room at the top. Under it the section, seen from the room. Held overhead and shaken the rollers lie apart, upside down they fall together. Toothed roller and smooth crown look outwards, to the ${seat.facing}.${
      lift.endGapMm === undefined
        ? ""
        : ` The gap at a roller’s end, with a cord beside it, is drawn ${GAP_TIMES} times as large.`
    }`,
    primitives: [
      ...[
        ...drawLockSection(input, window, undersideY),
        ...drawLockUpsideDown(input, [inHandX, lowestY]),
        ...drawEndGap(input, [inHandX + way * (lift.housingLengthMm / 2 + 10), lowestY + 4]),
      ].map((one): Primitive => ({ ...one, atDesk: true })),
      ...window.eyes.map(({ number, ...eye }) =>
        eyeBelow(eye, lift.eyeDiameterMm / 2, lift.eyeDiameterMm / 5, toPage, `eye-${number}`),
      ),
      ...drawHousing(input),
      ...drawCords(input, window, toPage),
      ...drawRollers(input),
      ...drawTurns(input, toPage),
      ...drawWires(input, toPage),
      ...drawSlotNumbers(input, window, toPage),
      ...drawScrews(input, toPage),
      ...drawNames(input),
    ],
    facts: [
      { label: "Lock", text: lift.lockName },
      { label: "Control side", text: lift.controlSide },
      { label: "Toothed roller", text: `towards the ${seat.facing}` },
      ...(lift.dividerWires === 0
        ? []
        : [{ label: "Smooth crown of the wires", text: `towards the ${seat.facing}` }]),
      { label: "Cords come in", text: entryText(lift) },
      ...(lift.endGapMm === undefined
        ? []
        : [{ label: "Gap at a roller’s end", text: fineText(lift.endGapMm) }]),
      { label: "Cord", text: `${lift.cordName}, ${fineText(lift.cordDiameterMm)}` },
      ...lift.slots.map((slot) => ({
        label: `Slot ${slot.number} from the wall`,
        text:
          slot.cords.length === 0
            ? slot.usable
              ? "empty"
              : "not for this cord"
            : `cord ${slot.cords.join(", ")}`,
      })),
      ...lift.cords.map((cord) => ({
        label: `Cord ${cord.number}`,
        text: `comes in from the ${cord.entersFrom}, slot ${cord.slot}`,
      })),
      { label: "Threading order", text: lift.threading.join(", ") },
    ],
  };
}

/** A cord within so many degrees is called level. */
const LEVEL_DEG = 1;

function entryText({ entry }: CordLockLift): string {
  const { climbDeg } = entry;
  if (Math.abs(climbDeg) < LEVEL_DEG) return "level";
  return `${climbDeg > 0 ? "climbing" : "descending"} at ${trimmed(Math.abs(climbDeg), 0)}° from the last eye`;
}

function drawHousing({ shade }: LockSheetInput): Primitive[] {
  const { housingLengthMm: length, housingWidthMm: width } = shade.lift;
  const inner = { length: length - 2 * WALL_OF_HOUSING_MM, width: width - 2 * WALL_OF_HOUSING_MM };
  return [
    rect("housing", { x: -length / 2, y: -width / 2, width: length, height: width }, { part: "lock" }),
    rect("label", { x: -inner.length / 2, y: -inner.width / 2, width: inner.length, height: inner.width }),
  ];
}

/** Both rollers lie across the board with the cords between them, apart as they run; the toothed one looks outwards. */
function drawRollers({ shade }: LockSheetInput): Primitive[] {
  const { lift } = shade;
  const side = outwards(lift);
  const diameter = lift.entry.rollerMm;
  const long = lift.entry.rollerLengthMm;
  const edge = rollerEdgeMm(lift);
  const roller = (role: "roller" | "toothedRoller", way: number) =>
    rect(
      role,
      { x: way > 0 ? edge : -edge - diameter, y: -long / 2, width: diameter, height: long },
      { part: role === "roller" ? "smooth-roller" : "toothed-roller" },
    );
  const teeth = Array.from({ length: TEETH }, (_, i): Primitive => {
    const x = side * (edge + ((i + 0.5) / TEETH) * diameter);
    return line("toothedRoller", [
      [x, -long / 2],
      [x, long / 2],
    ]);
  });
  return [roller("roller", -side), roller("toothedRoller", side), ...teeth];
}

/** From the middle of the housing to the near edge of a roller: two cords' room between both. */
function rollerEdgeMm({ cordDiameterMm }: CordLockLift): number {
  return cordDiameterMm;
}

/** From below a wire is one line: it is bent like a staple that stands upright round the rollers. */
function drawWires({ shade }: LockSheetInput, toPage: ToPage): Primitive[] {
  const { slots, seat, housingLengthMm } = shade.lift;
  const way = outwards(shade.lift);
  const half = housingLengthMm / 2;
  return slots.slice(1).flatMap((slot, i) => {
    const before = slots[i];
    if (before === undefined) return [];
    const y = toPage(seat.xMm, (before.zMm + slot.zMm) / 2)[1];
    return [
      line(
        "dividerWire",
        [
          [-way * (half + CUT_END_MM), y],
          [way * (half + CROWN_MM), y],
        ],
        { part: `wire-${i + 1}` },
      ),
      // The crown is bent and smooth; the other end is cut off square.
      {
        kind: "circle",
        role: "dividerWire",
        centre: [way * (half + CROWN_MM), y],
        radiusMm: CROWN_WIRE_MM,
        part: `wire-${i + 1}`,
      },
    ];
  });
}

/** Where it lies above a roller, the roller hides it: the rollers are drawn over the cords. */
function drawCords(input: LockSheetInput, window: LockWindow, toPage: ToPage): Primitive[] {
  return input.shade.lift.cords.flatMap((cord): Primitive[] => {
    const points = cropped(
      cord.path.map((point) => toPage(point.xMm, point.zMm)),
      window,
    );
    const edge = points[0];
    if (edge === undefined || points.length < 2) return [];
    const side = cord.entersFrom;
    const ref = { cord: cord.number, part: `cord-${cord.number}` };
    return [
      line("cord", seenPart(input.shade.lift, points), ref),
      { ...cordTag(edge, cord.number, [side === "left" ? -FAN_PAPER_MM : FAN_PAPER_MM, 0]), stack: side },
    ];
  });
}

/** Without what lies above the roller on its side. */
function seenPart(lift: CordLockLift, points: readonly Point[]): Point[] {
  const last = points.at(-1);
  const before = points.at(-2);
  if (last === undefined || before === undefined) return [...points];
  const edge = Math.sign(before[0] - last[0]) * (rollerEdgeMm(lift) + lift.entry.rollerMm);
  return [...points.slice(0, -1).filter(([x]) => Math.abs(x) > Math.abs(edge)), [edge, last[1]]];
}

/** Where each cord comes down between the rollers, towards the one who looks up. */
function drawTurns({ shade }: LockSheetInput, toPage: ToPage): Primitive[] {
  return shade.lift.cords.flatMap((cord): Primitive[] => {
    const drop = cord.path.at(-1);
    if (drop === undefined) return [];
    return [
      {
        kind: "marker",
        role: "cord",
        shape: "dot",
        at: toPage(drop.xMm, drop.zMm),
        paperMm: 1.8,
        cord: cord.number,
        part: `cord-${cord.number}`,
      },
    ];
  });
}

/** A cord's path from the edge of what is shown to its turn; a cord from further away enters at the edge. */
function cropped(path: readonly Point[], { fromMm, toMm }: LockWindow): Point[] {
  const points: Point[] = [];
  const inside = ([x]: Point) => x >= fromMm && x <= toMm;
  path.forEach((point, i) => {
    const next = path[i + 1];
    const isInside = inside(point);
    if (isInside) points.push(point);
    if (next === undefined || isInside === inside(next)) return;
    const out = isInside ? next[0] : point[0];
    const edge = out < 0 ? fromMm : toMm;
    const share = (edge - point[0]) / (next[0] - point[0]);
    points.push([edge, point[1] + share * (next[1] - point[1])]);
  });
  return points;
}

/** Beside the housing on the side with fewer cords, so that the numbers stand clear. */
function drawSlotNumbers(input: LockSheetInput, window: LockWindow, toPage: ToPage): Primitive[] {
  const { slots, cords, seat } = input.shade.lift;
  const from = (side: CordRun["entersFrom"]) => cords.filter((cord) => cord.entersFrom === side).length;
  const side = from("left") < from("right") ? -1 : 1;
  const isClear = Math.min(from("left"), from("right")) === 0;
  const edge = side < 0 ? window.fromMm : window.toMm;
  const x = isClear ? (side * input.shade.lift.housingLengthMm) / 2 : edge;
  const shift: Point = [side * (isClear ? 5.5 : FAN_PAPER_MM + 4), 0];
  return slots.map((slot, i) => {
    const text = slot.usable ? `slot ${slot.number}` : `slot ${slot.number}, empty`;
    return name([x, toPage(seat.xMm, slot.zMm)[1]], text, {
      anchor: side < 0 ? "end" : "start",
      shiftPaperMm: shift,
      part: `slot-${slot.number}`,
      // The first tells where they are counted from; the others where there is room.
      yields: i > 0,
    });
  });
}

function drawScrews({ shade }: LockSheetInput, toPage: ToPage): Primitive[] {
  return shade.lift.seat.screwsMm.map((screw) => ({
    kind: "marker",
    role: "screw",
    shape: "cross",
    at: toPage(screw.xMm, screw.zMm),
    paperMm: 2.4,
    part: "lock",
  }));
}

function drawNames(input: LockSheetInput): Primitive[] {
  const { lift } = input.shade;
  const { units } = input;
  const top = -lift.housingWidthMm / 2;
  const bottom = lift.housingWidthMm / 2;
  return [
    note([0, top], "room", { shiftPaperMm: [0, -10] }),
    note([0, bottom], input.shade.mount === "inside" ? "glass" : "wall", {
      shiftPaperMm: [0, 3.4],
      yields: true,
    }),
    dimensionOf(
      {
        from: [-lift.housingLengthMm / 2, top],
        to: [lift.housingLengthMm / 2, top],
        offset: 4,
        part: "lock",
      },
      units,
    ),
  ];
}
