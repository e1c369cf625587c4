import type { LoopLift, WandLift } from "../../shade-plan/index.ts";
import type { Fact, Point, Primitive } from "../model.ts";
import { hangingTail } from "./hanging-tail.ts";
import { isCleatSheet, isLockSheet, isTubeSheet, type TubeSheetInput } from "./lift-input.ts";
import { callout, type DrawnRect, line, rect } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";
import { axisYMm } from "./tube-elevation.ts";

const WAND_MM = 9;
const TENSIONER_MM = 26;

/** What hangs at the control side, seen from the room: hidden behind the cloth, plain below it. */
export function hangingControl(input: SheetInput, raise: number): Primitive[] {
  if (isLockSheet(input) || isCleatSheet(input)) return hangingTail(input, raise, (x) => x);
  if (!isTubeSheet(input)) return [];
  const { grid } = input.shade;
  const hemY = grid.bottomSectionMm + (grid.rows[0]?.yMm ?? grid.topSectionMm) - raise * grid.travelMm;
  // Measures stand on the left of the front: words go to the right, over the cloth where need be.
  return tubeControl(input, (x) => x, { clothToYMm: hemY, side: 1 });
}

/** The same in words. */
export function controlFacts({ shade, units }: SheetInput): Fact[] {
  const { lift } = shade;
  switch (lift.hangs) {
    case "loop":
      return [lengthFact("Loop, from the drive down to its tensioner", lift.loopDropMm, units)];
    case "wand":
      return [lengthFact("Wand below the drive", lift.wandMm, units)];
    case "tail":
    case "nothing":
      return [];
  }
}

interface Seen {
  /** The cloth hides it so far down, mm below the top line. */
  clothToYMm?: number;
  /** Words to the right (1) or to the left (−1); outwards unless given. */
  side?: 1 | -1;
}

/** Loop or wand of a tube; a spring and a motor have nothing that hangs. */
export function tubeControl(
  input: TubeSheetInput,
  across: (xMm: number) => number,
  { clothToYMm = 0, side }: Seen = {},
): Primitive[] {
  const { lift } = input.shade;
  const x = across(lift.drive.xMm);
  const outward = x > input.shade.size.finishedWidthMm / 2 ? 1 : -1;
  const place: Spot = {
    x,
    axis: axisYMm(input, lift.drive.xMm),
    side: side ?? outward,
    isInward: side === -outward,
    clothToYMm,
  };
  switch (lift.hangs) {
    case "loop":
      return drawLoop(lift, place);
    case "wand":
      return drawWand(lift, place);
    case "nothing":
      return [];
  }
}

interface Spot {
  x: number;
  axis: number;
  side: 1 | -1;
  /** Words stand over the shade and not beside it. */
  isInward: boolean;
  clothToYMm: number;
}

function drawLoop(lift: LoopLift, { x, axis, side, isInward, clothToYMm }: Spot): Primitive[] {
  const half = lift.wheelMm / 2;
  const end = axis + lift.loopDropMm;
  const ref = { part: "loop" };
  const strands: Point[][] = [
    [
      [x - half, axis],
      [x - half, Math.max(axis, end - half)],
    ],
    [
      [x + half, axis],
      [x + half, Math.max(axis, end - half)],
    ],
  ];
  const hidden = clothToYMm > end;
  return [
    ...strands.flatMap((points) => split("loop", points, clothToYMm, ref)),
    line(hidden ? "hidden" : "loop", halfCircle(x, Math.max(axis, end - half), half), ref),
    rect(hidden ? "ghost" : "tubeSupport", tensioner(x, end), { part: "tensioner" }),
    words("tensioner", [x + side * half, end], side, hidden && isInward, "tensioner"),
  ];
}

function tensioner(x: number, end: number): DrawnRect {
  return { x: x - TENSIONER_MM / 2, y: end - TENSIONER_MM * 0.8, width: TENSIONER_MM, height: TENSIONER_MM };
}

function halfCircle(x: number, y: number, radius: number): Point[] {
  return Array.from({ length: 9 }, (_, i): Point => {
    const angle = (Math.PI * i) / 8;
    return [x - radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

function drawWand(lift: WandLift, { x, axis, side, isInward, clothToYMm }: Spot): Primitive[] {
  const end = axis + lift.wandMm;
  const hiddenTo = Math.min(end, Math.max(axis, clothToYMm));
  const ref = { part: "wand" };
  const outline = (from: number, to: number): DrawnRect => ({
    x: x - WAND_MM / 2,
    y: from,
    width: WAND_MM,
    height: Math.max(0, to - from),
  });
  return [
    ...(hiddenTo > axis ? [rect("ghost", outline(axis, hiddenTo), ref)] : []),
    ...(end > hiddenTo ? [rect("wand", outline(hiddenTo, end), ref)] : []),
    words("wand", [x + (side * WAND_MM) / 2, end], side, isInward && clothToYMm > end, "wand"),
  ];
}

function words(text: string, at: Point, side: 1 | -1, onCloth: boolean, part: string): Primitive {
  return {
    ...callout(at, text, [side * 4, 3], { part, yields: true }),
    ...(onCloth ? { ground: "faceCloth" as const } : {}),
  };
}

/** A vertical line, dashed as far as the cloth hides it. */
function split(role: "loop", points: Point[], clothToYMm: number, ref: { part: string }): Primitive[] {
  const [from, to] = points;
  if (from === undefined || to === undefined) return [];
  const edge = Math.min(to[1], Math.max(from[1], clothToYMm));
  return [
    ...(edge > from[1] ? [line("hidden", [from, [from[0], edge]], ref)] : []),
    ...(to[1] > edge ? [line(role, [[to[0], edge], to], ref)] : []),
  ];
}
