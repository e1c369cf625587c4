import type { TubeLift } from "../../shade/index.ts";
import { fineText, trimmed } from "../../units/index.ts";
import type { Drawing, Fact, Point, Primitive } from "../model.ts";
import { hasLock, hasTube, type TubeInput } from "./lift-input.ts";
import { drawLockSheet } from "./lock.ts";
import { callout, cordTag, line, measure, note, rect } from "./shapes.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";
import { type ToPage, tubeBelow } from "./tube-below.ts";

/** Shown beyond the outermost part on either side, mm. */
const MARGIN_MM = 14;
/** Between the view from below and the view from the end, mm. */
const APART_MM = 26;

const TITLES: Record<TubeLift["kind"], string> = {
  spring: "Spring and spool",
  "tube-wand": "Wand drive and spool",
  "tube-loop": "Loop drive and spool",
  motor: "Motor and spool",
};

/** What takes up the cords, enlarged: the lock with its slots, or the drive with the spool beside it. */
export function drawControlSheet(input: SheetInput): Drawing {
  if (hasLock(input)) return drawLockSheet(input);
  if (hasTube(input)) return drawDriveSheet(input);
  throw new Error(`invalid lift: ${input.shade.lift.kind}`);
}

/** Drive and nearest spool from below, and a spool from the end with its cord lowered and raised. */
function drawDriveSheet(input: TubeInput): Drawing {
  const { lift } = input.shade;
  const window = windowOf(lift);
  // The middle of the window is the origin; the room is up, since the wall's z grows towards it.
  const middle = (window.fromMm + window.toMm) / 2;
  const toPage: ToPage = (xMm, zMm) => [xMm - middle, lift.tube.zMm - zMm];
  return {
    id: "lock",
    title: TITLES[lift.kind],
    caption: `Seen from below, left as seen from the room, room at the top; beneath it one spool seen from the left end, wall on the left. Control side: ${lift.controlSide}.`,
    primitives: [...fromBelow(input, window, toPage), ...fromTheEnd(input)],
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

function fromBelow(input: TubeInput, window: Window, toPage: ToPage): Primitive[] {
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
  const widest = Math.max(drive.depthMm, ...lift.spools.map(({ flangeMm }) => flangeMm)) / 2;
  return [
    ...tubeBelow(shown, toPage),
    ...controlMark(input, toPage),
    ...drive.screwsMm.map(
      (screw): Primitive => ({
        kind: "marker",
        role: "screw",
        shape: "cross",
        at: toPage(screw.xMm, screw.zMm),
        paperMm: 2.4,
        part: "drive",
      }),
    ),
    ...shown.spools.map(
      ({ number, xMm }): Primitive => cordTag(toPage(xMm, tube.zMm + widest), number, [0, -5]),
    ),
    note([0, -widest], "room", { shiftPaperMm: [0, -11] }),
    note([0, widest], input.shade.mount === "inside" ? "glass" : "wall", {
      shiftPaperMm: [0, 14],
      yields: true,
    }),
    measure(
      {
        from: toPage(drive.xMm - drive.lengthMm / 2, tube.zMm - widest),
        to: toPage(drive.xMm + drive.lengthMm / 2, tube.zMm - widest),
        offset: -6,
        label: "drive",
        part: "drive",
      },
      input.units,
    ),
  ];
}

/** Where loop or wand leave the drive, towards the one who looks up. */
function controlMark({ shade }: TubeInput, toPage: ToPage): Primitive[] {
  const { lift } = shade;
  const { xMm, zMm } = lift.drive;
  switch (lift.kind) {
    case "tube-loop": {
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
        callout(toPage(xMm, zMm - half), "loop, down", [8, 5], { part: "loop", yields: true }),
      ];
    }
    case "tube-wand":
      return [
        { kind: "circle", role: "wand", centre: toPage(xMm, zMm), radiusMm: 4.5, part: "wand" },
        callout(toPage(xMm, zMm), "wand, down", [9, 6], { part: "wand", yields: true }),
      ];
    default:
      return [];
  }
}

/** Flange, core and tube, and the cord where it drops off, lowered and raised: always on the room side. */
function fromTheEnd(input: TubeInput): Primitive[] {
  const { lift, board } = input.shade;
  const [spool] = lift.spools;
  if (spool === undefined) return [];
  const { tube, drive } = lift;
  const top = Math.max(drive.depthMm, spool.flangeMm) / 2 + APART_MM;
  const centre: Point = [0, top + tube.axisMm];
  const left = centre[0] - tube.zMm;
  const bottom = centre[1] + spool.flangeMm * 1.1;
  const circle = (role: "spool" | "tube" | "ghost", diameterMm: number, part: string): Primitive => ({
    kind: "circle",
    role,
    centre,
    radiusMm: diameterMm / 2,
    part,
  });
  const ref = { cord: spool.number, part: `cord-${spool.number}` };
  const lowered: Point = [centre[0] + lift.woundLoweredMm, centre[1]];
  const raised: Point = [centre[0] + lift.woundRaisedMm, centre[1]];
  return [
    rect(
      "board",
      { x: left, y: top - board.thicknessMm, width: board.depthMm, height: board.thicknessMm },
      { part: "board" },
    ),
    circle("spool", spool.flangeMm, "spool-1"),
    circle("spool", spool.coreMm, "spool-1"),
    circle("ghost", 2 * lift.woundRaisedMm, "spool-1"),
    circle("tube", tube.diameterMm, "tube"),
    line("cord", [lowered, [lowered[0], bottom]], ref),
    note([centre[0] - spool.flangeMm / 2, centre[1]], "wall side", {
      anchor: "end",
      shiftPaperMm: [-3, 0],
      yields: true,
    }),
    callout([raised[0], centre[1] - 2], "cord raised", [11, -6], { part: "spool-1", yields: true }),
    callout([lowered[0], bottom - 3], "cord down", [9, 2], { part: `cord-${spool.number}`, yields: true }),
  ];
}

function facts({ shade, units }: TubeInput): Fact[] {
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
