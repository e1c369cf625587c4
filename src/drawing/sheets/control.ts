import type { TubeLift } from "../../shade-plan/index.ts";
import { fineText, trimmed } from "../../units/index.ts";
import type { Drawing, Fact, Point, Primitive } from "../model.ts";
import { drawCleatSheet } from "./cleat.ts";
import { isCleatSheet, isLockSheet, isTubeSheet, type TubeSheetInput } from "./lift-input.ts";
import { drawLockSheet } from "./lock.ts";
import { callout, cordTag, dimensionOf, line, note, rect, screwMark } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";
import { type ToPage, tubeBelow } from "./tube-below.ts";

/** Shown beyond the outermost part on either side, mm. */
const MARGIN_MM = 14;
/** Between the view from below and the view from the end, mm. */
const APART_MM = 34;
/** Turns drawn on a spool where there is room for them. */
const MANY_TURNS = 4;

const TITLES: Record<TubeLift["kind"], string> = {
  spring: "Spring and spool",
  "tube-wand": "Wand drive and spool",
  "tube-loop": "Loop drive and spool",
  motor: "Motor and spool",
};

/**
 * What takes up the cords, enlarged: the lock with its slots, the cleat with its turns, or the drive with the spool beside it.
 *
 * @throws on a lift that nothing takes up: a bug
 */
export function drawControlSheet(input: SheetInput): Drawing {
  if (isLockSheet(input)) return drawLockSheet(input);
  if (isCleatSheet(input)) return drawCleatSheet(input);
  if (isTubeSheet(input)) return drawDriveSheet(input);
  throw new Error("invalid lift: nothing takes up its cords");
}

/** Drive and nearest spool from below, and a spool from the end with its cord lowered and raised. */
function drawDriveSheet(input: TubeSheetInput): Drawing {
  const { lift } = input.shade;
  const window = windowOf(lift);
  // The middle of the window is the origin; the room is up, since the wall's z grows towards it.
  const middle = (window.fromMm + window.toMm) / 2;
  const toPage: ToPage = (xMm, zMm) => [xMm - middle, lift.tube.zMm - zMm];
  return {
    id: "lock",
    title: TITLES[lift.kind],
    caption: `Seen from below, left as seen from the room, room at the top. Beside it one spool seen from the left end, wall on the left. Control side: ${lift.controlSide}.`,
    primitives: [...fromBelow(input, window, toPage), ...fromTheEnd(input, window)],
    facts: facts(input),
  };
}

interface Window {
  fromMm: number;
  toMm: number;
  spools: number[];
}

/** The drive, and the spools that stand next to it on either side. */
function windowOf({ drive, spools }: TubeLift): Window {
  const left = spools.filter(({ xMm }) => xMm <= drive.xMm).at(-1);
  const right = spools.find(({ xMm }) => xMm > drive.xMm);
  const shown = [left, right].flatMap((spool) => spool ?? []);
  const reach = [
    drive.xMm - drive.lengthMm / 2,
    drive.xMm + drive.lengthMm / 2,
    ...shown.flatMap(({ xMm, lengthMm }) => [xMm - lengthMm / 2, xMm + lengthMm / 2]),
  ];
  return {
    fromMm: Math.min(...reach) - MARGIN_MM,
    toMm: Math.max(...reach) + MARGIN_MM,
    spools: shown.map(({ number }) => number),
  };
}

function fromBelow(input: TubeSheetInput, window: Window, toPage: ToPage): Primitive[] {
  const { lift } = input.shade;
  const { tube, drive } = lift;
  const inWindow = (xMm: number) => xMm >= window.fromMm && xMm <= window.toMm;
  const fromMm = Math.max(tube.fromMm, window.fromMm);
  const toMm = Math.min(tube.toMm, window.toMm);
  const shown: TubeLift = {
    ...lift,
    spools: lift.spools.filter(({ number }) => window.spools.includes(number)),
    supports: lift.supports.filter(({ xMm }) => inWindow(xMm)),
    tube: { ...tube, fromMm, toMm, lengthMm: Math.max(0, toMm - fromMm) },
  };
  const { board, mount } = input.shade;
  const boardFrom = Math.max(board.leftMm, window.fromMm);
  const boardTo = Math.min(board.leftMm + board.lengthMm, window.toMm);
  const [left, top] = toPage(boardFrom, board.depthMm);
  const [right, bottom] = toPage(Math.max(boardFrom, boardTo), 0);
  const reach = Math.max(drive.depthMm, ...lift.spools.map(({ flangeMm }) => flangeMm)) / 2;
  const upper = Math.min(top, -reach);
  const lower = Math.max(bottom, reach);
  return [
    rect("board", { x: left, y: top, width: right - left, height: bottom - top }, { part: "board" }),
    ...tubeBelow(shown, toPage, MANY_TURNS),
    ...controlMark(input, toPage),
    ...drive.screwsMm.map((screw) => screwMark(toPage(screw.xMm, screw.zMm), "drive", 2.4)),
    ...shown.spools.map(({ number, xMm }): Primitive => cordTag([toPage(xMm, 0)[0], upper], number, [0, -5])),
    note([left, upper], "room", { anchor: "end", shiftPaperMm: [-2, 1.5], yields: true }),
    note([left, lower], mount === "inside" ? "glass" : "wall", {
      anchor: "end",
      shiftPaperMm: [-2, -1.5],
      yields: true,
    }),
    dimensionOf(
      {
        from: [toPage(drive.xMm - drive.lengthMm / 2, 0)[0], lower],
        to: [toPage(drive.xMm + drive.lengthMm / 2, 0)[0], lower],
        offset: -6,
        label: "drive",
        part: "drive",
      },
      input.units,
    ),
  ];
}

/** Where loop or wand leave the drive, towards the one who looks up. */
function controlMark({ shade }: TubeSheetInput, toPage: ToPage): Primitive[] {
  const { lift } = shade;
  const { xMm, zMm, depthMm } = lift.drive;
  const outward = lift.controlSide === "right" ? 1 : -1;
  switch (lift.hangs) {
    case "loop": {
      const half = lift.wheelMm / 2;
      return [
        line("loop", [toPage(xMm, zMm - half), toPage(xMm, zMm + half)], { part: "loop" }),
        ...[zMm - half, zMm + half].map(
          (z): Primitive => ({
            kind: "marker",
            role: "loop",
            shape: "dot",
            at: toPage(xMm, z),
            paperMm: 1.8,
            part: "loop",
          }),
        ),
        callout(toPage(xMm, zMm + half), "loop, down", [outward * 6, -8], { part: "loop", yields: true }),
      ];
    }
    case "wand":
      return [
        { kind: "circle", role: "wand", centre: toPage(xMm, zMm), radiusMm: 4.5, part: "wand" },
        callout(toPage(xMm, zMm + depthMm / 2), "wand, down", [outward * 6, -8], {
          part: "wand",
          yields: true,
        }),
      ];
    case "nothing":
      return [];
  }
}

/** Flange, core and tube, and the cord where it drops off, lowered and raised: always on the room side. */
function fromTheEnd(input: TubeSheetInput, window: Window): Primitive[] {
  const { lift, board } = input.shade;
  const spool = lift.spools.find(({ number }) => window.spools.includes(number)) ?? lift.spools[0];
  if (spool === undefined) return [];
  const { tube } = lift;
  const left = (window.toMm - window.fromMm) / 2 + APART_MM;
  const top = -board.depthMm / 2;
  const underside = top + board.thicknessMm;
  const centre: Point = [left + tube.zMm, underside + tube.axisMm];
  const bottom = centre[1] + spool.flangeMm;
  const part = `spool-${spool.number}`;
  const circle = (role: "spool" | "tube" | "ghost", diameterMm: number): Primitive => ({
    kind: "circle",
    role,
    centre,
    radiusMm: diameterMm / 2,
    part: role === "tube" ? "tube" : part,
  });
  const lowered: Point = [centre[0] + lift.woundLoweredMm, centre[1]];
  return [
    rect("board", { x: left, y: top, width: board.depthMm, height: board.thicknessMm }, { part: "board" }),
    circle("spool", spool.flangeMm),
    circle("spool", spool.coreMm),
    circle("ghost", 2 * lift.woundRaisedMm),
    circle("tube", tube.diameterMm),
    line("cord", [lowered, [lowered[0], bottom]], { part: `cord-${spool.number}` }),
    callout([centre[0] + lift.woundRaisedMm, centre[1] - 2], "cord, raised", [9, -5], { part, yields: true }),
    callout([lowered[0], bottom - 3], "cord, down", [8, 1], { part: `cord-${spool.number}`, yields: true }),
  ];
}

function facts({ shade, units }: TubeSheetInput): Fact[] {
  const { lift } = shade;
  const [spool] = lift.spools;
  const shared: Fact[] = [
    { label: "Drive", text: lift.drive.name },
    { label: "Control side", text: lift.controlSide },
    { label: "Lift tube", text: `${lift.tube.name}, ${fineText(lift.tube.diameterMm)}` },
    ...(spool === undefined
      ? []
      : [
          { label: "Spool", text: `core ${fineText(spool.coreMm)}, flanges ${fineText(spool.flangeMm)}` },
          { label: "Turns left on a spool, lowered", text: trimmed(lift.wrapsLeft, 0) },
        ]),
    { label: "Cord", text: `${lift.cordName}, ${fineText(lift.cordDiameterMm)}` },
    { label: "Turns of the tube from lowered to raised", text: trimmed(lift.turns, 1) },
  ];
  switch (lift.kind) {
    case "spring":
      return shared;
    case "tube-wand":
      return [...shared, lengthFact("Wand below the drive", lift.wandMm, units)];
    case "tube-loop":
      return [
        ...shared,
        lengthFact("Loop, down to its lowest point", lift.loopDropMm, units),
        lengthFact("Loop, all round", lift.loopPerimeterMm, units),
      ];
    case "motor":
      return lift.raiseSeconds === undefined
        ? shared
        : [...shared, { label: "Time to raise", text: `${trimmed(lift.raiseSeconds, 0)} s` }];
  }
}
