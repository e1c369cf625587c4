import type { CordRun } from "../../shade-plan/index.ts";
import { fineText } from "../../units/index.ts";
import type { Drawing, Point, Primitive } from "../model.ts";
import type { LockSheetInput } from "./lift-input.ts";
import { callout, cordTag, dimensionOf, line, name, note, rect } from "./shapes.ts";

const WALL_OF_HOUSING_MM = 1.5;
const ROLLER_GAP_MM = 1.2;
const LARGEST_ROLLER_MM = 9;
const TEETH = 6;
/** From the edge of what is shown to the cord numbers, mm on paper. */
const FAN_PAPER_MM = 9;

type ToPage = (xMm: number, zMm: number) => Point;

/** The lock seen from below, enlarged: rollers, wires, numbered slots, and every cord from the side it comes in. */
export function drawLockSheet(input: LockSheetInput): Drawing {
  const { shade } = input;
  const { lift } = shade;
  const { seat } = lift;
  // The middle of the housing is the origin; the room is up, since the wall's z grows towards it.
  const toPage: ToPage = (xMm, zMm) => [xMm - seat.xMm, seat.zMm - zMm];
  return {
    id: "lock",
    title: "Lock and cords",
    caption: `Seen from below, left as seen from the room, room at the top. Control side: ${lift.controlSide}. The toothed roller lies towards the ${seat.facing}.`,
    primitives: [
      ...drawHousing(input),
      ...drawRollers(input),
      ...drawCords(input, toPage),
      ...drawWires(input, toPage),
      ...drawSlotNumbers(input, toPage),
      ...drawScrews(input, toPage),
      ...drawNames(input),
    ],
    facts: [
      { label: "Lock", text: lift.lockName },
      { label: "Control side", text: lift.controlSide },
      { label: "Toothed roller", text: `towards the ${seat.facing}` },
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

/** Half the width of what is shown along the board. */
function reachMm({ shade }: LockSheetInput): number {
  return shade.lift.housingLengthMm * 0.95;
}

function drawHousing({ shade }: LockSheetInput): Primitive[] {
  const { housingLengthMm: length, housingWidthMm: width } = shade.lift;
  const inner = { length: length - 2 * WALL_OF_HOUSING_MM, width: width - 2 * WALL_OF_HOUSING_MM };
  return [
    rect("housing", { x: -length / 2, y: -width / 2, width: length, height: width }, { part: "lock" }),
    rect("label", { x: -inner.length / 2, y: -inner.width / 2, width: inner.length, height: inner.width }),
  ];
}

/** Both rollers lie across the board with the cords between them; the toothed one towards the facing side. */
function drawRollers({ shade }: LockSheetInput): Primitive[] {
  const { lift } = shade;
  const side = lift.seat.facing === "right" ? 1 : -1;
  const diameter = Math.min(LARGEST_ROLLER_MM, lift.housingLengthMm * 0.3);
  const long = lift.housingWidthMm - 2 * WALL_OF_HOUSING_MM;
  const edge = ROLLER_GAP_MM / 2;
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

function drawWires({ shade }: LockSheetInput, toPage: ToPage): Primitive[] {
  const { slots, seat, housingLengthMm } = shade.lift;
  const half = housingLengthMm / 2 - WALL_OF_HOUSING_MM;
  return slots.slice(1).flatMap((slot, i) => {
    const before = slots[i];
    if (before === undefined) return [];
    const y = toPage(seat.xMm, (before.zMm + slot.zMm) / 2)[1];
    return [
      line(
        "dividerWire",
        [
          [-half, y],
          [half, y],
        ],
        { part: `wire-${i + 1}` },
      ),
    ];
  });
}

function drawCords(input: LockSheetInput, toPage: ToPage): Primitive[] {
  const reach = reachMm(input);
  return input.shade.lift.cords.flatMap((cord): Primitive[] => {
    const points = cropped(
      cord.path.map((point) => toPage(point.xMm, point.zMm)),
      reach,
    );
    const edge = points[0];
    const drop = points.at(-1);
    if (edge === undefined || drop === undefined) return [];
    const side = edge[0] < 0 ? "left" : "right";
    const ref = { cord: cord.number, part: `cord-${cord.number}` };
    return [
      line("cord", points, ref),
      { ...cordTag(edge, cord.number, [side === "left" ? -FAN_PAPER_MM : FAN_PAPER_MM, 0]), stack: side },
      // Where the cord turns down, towards the one who looks up.
      { kind: "marker", role: "cord", shape: "dot", at: drop, paperMm: 1.8, ...ref },
    ];
  });
}

/** A cord's path from the edge of what is shown to its turn; a cord from further away enters at the edge. */
function cropped(path: readonly Point[], reach: number): Point[] {
  const points: Point[] = [];
  path.forEach((point, i) => {
    const next = path[i + 1];
    const isInside = Math.abs(point[0]) <= reach;
    if (isInside) points.push(point);
    if (next === undefined || isInside === Math.abs(next[0]) <= reach) return;
    const edge = Math.sign(isInside ? next[0] : point[0]) * reach;
    const share = (edge - point[0]) / (next[0] - point[0]);
    points.push([edge, point[1] + share * (next[1] - point[1])]);
  });
  return points;
}

/** Beside the housing on the side with fewer cords, so that the numbers stand clear. */
function drawSlotNumbers(input: LockSheetInput, toPage: ToPage): Primitive[] {
  const { slots, cords, seat } = input.shade.lift;
  const from = (side: CordRun["entersFrom"]) => cords.filter((cord) => cord.entersFrom === side).length;
  const side = from("left") < from("right") ? -1 : 1;
  const isClear = Math.min(from("left"), from("right")) === 0;
  const x = side * (isClear ? input.shade.lift.housingLengthMm / 2 : reachMm(input));
  const shift: Point = [side * (isClear ? 2.5 : FAN_PAPER_MM + 4), 0];
  return slots.map((slot) => {
    const text = slot.usable ? `slot ${slot.number}` : `slot ${slot.number}, empty`;
    return name([x, toPage(seat.xMm, slot.zMm)[1]], text, {
      anchor: side < 0 ? "end" : "start",
      shiftPaperMm: shift,
      part: `slot-${slot.number}`,
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
  const side = lift.seat.facing === "right" ? 1 : -1;
  return [
    note([0, top], "room", { shiftPaperMm: [0, -10] }),
    note([0, bottom], input.shade.mount === "inside" ? "glass" : "wall", { shiftPaperMm: [0, 10] }),
    callout([side * 5, bottom - 2.2], "toothed roller", [side * 10, 14], { part: "toothed-roller" }),
    callout([-side * 5, bottom - 2.2], "smooth roller", [-side * 10, 14], { part: "smooth-roller" }),
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
