import type { Spool, TubeLift } from "../../shade-plan/index.ts";
import type { Point, Primitive, Role } from "../model.ts";
import { line } from "./shapes.ts";

/** From a place on the board, seen from below, to the page. */
export type ToPage = (xMm: number, zMm: number) => Point;

const FLANGE_MM = 2.5;
/** Share of a spool's length over which its turns are drawn, and how many are, unless asked for more. */
const TURNS_SHARE = 0.5;
const FEW_TURNS = 2;

/** A part along the board, symmetric about its middle line. */
interface Box {
  xMm: number;
  lengthMm: number;
  acrossMm: number;
}

/** Tube, supports, drive and spools with their cords, seen from below. */
export function tubeBelow(lift: TubeLift, toPage: ToPage, turns = FEW_TURNS): Primitive[] {
  const { tube, drive } = lift;
  return [
    ...lift.supports.map(({ number, xMm }) =>
      box(
        "tubeSupport",
        toPage,
        tube.zMm,
        { xMm, lengthMm: lift.supportLengthMm, acrossMm: tube.diameterMm * 1.9 },
        `support-${number}`,
      ),
    ),
    box(
      "tube",
      toPage,
      tube.zMm,
      { xMm: (tube.fromMm + tube.toMm) / 2, lengthMm: tube.lengthMm, acrossMm: tube.diameterMm },
      "tube",
    ),
    ...lift.spools.flatMap((spool) => spoolBelow(spool, tube.zMm, toPage)),
    ...lift.spools.flatMap((spool) => turnsBelow(spool, lift, toPage, turns)),
    box(
      "drive",
      toPage,
      drive.zMm,
      { xMm: drive.xMm, lengthMm: drive.lengthMm, acrossMm: drive.depthMm },
      "drive",
    ),
  ];
}

function box(
  role: Role,
  toPage: ToPage,
  zMm: number,
  { xMm, lengthMm, acrossMm }: Box,
  part: string,
): Primitive {
  const corner = (along: number, across: number) => toPage(xMm + along * lengthMm, zMm + across * acrossMm);
  return line(role, [corner(-0.5, -0.5), corner(0.5, -0.5), corner(0.5, 0.5), corner(-0.5, 0.5)], {
    part,
    closed: true,
  });
}

function spoolBelow(
  { number, xMm, lengthMm, coreMm, flangeMm }: Spool,
  zMm: number,
  toPage: ToPage,
): Primitive[] {
  const part = `spool-${number}`;
  const flange = Math.min(FLANGE_MM, lengthMm / 3);
  const plate = (at: number) =>
    box("spool", toPage, zMm, { xMm: at, lengthMm: flange, acrossMm: flangeMm }, part);
  return [
    box("spool", toPage, zMm, { xMm, lengthMm, acrossMm: coreMm }, part),
    plate(xMm - (lengthMm - flange) / 2),
    plate(xMm + (lengthMm - flange) / 2),
  ];
}

/** A few of the turns on a spool, and the place where the cord drops off it, on the side nearer to the room. */
function turnsBelow(
  spool: Spool,
  { tube, woundLoweredMm }: TubeLift,
  toPage: ToPage,
  turns: number,
): Primitive[] {
  const ref = { cord: spool.number, part: `cord-${spool.number}` };
  const step = (spool.lengthMm * TURNS_SHARE) / turns;
  const from = spool.xMm - (step * turns) / 2;
  const half = spool.coreMm / 2;
  const points: Point[] = [];
  for (let i = 0; i < turns; i++) {
    points.push(toPage(from + i * step, tube.zMm - half), toPage(from + (i + 0.7) * step, tube.zMm + half));
  }
  const drop = toPage(spool.xMm + (step * turns) / 2, tube.zMm + woundLoweredMm);
  return [
    line("cord", [...points, drop], ref),
    { kind: "marker", role: "cord", shape: "dot", at: drop, paperMm: 1.5, ...ref },
  ];
}
