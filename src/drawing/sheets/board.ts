import { type CordLockLift, fromBoardEndMm } from "../../shade-plan/index.ts";
import { forceText } from "../../units/index.ts";
import type { Drawing, Fact, Point, Primitive } from "../model.ts";
import { eyeBelow } from "./eye-below.ts";
import {
  type CleatSheetInput,
  isCleatSheet,
  isLockSheet,
  isTubeSheet,
  type LockSheetInput,
  type TubeSheetInput,
} from "./lift-input.ts";
import { callout, cordTag, dimensionOf, line, note, rect, screwMark } from "./shapes.ts";
import { figureRef, lengthFact, type SheetInput } from "./sheet-input.ts";
import { type ToPage, tubeBelow } from "./tube-below.ts";

/** Lanes of cords at the eyes are drawn apart by up to this factor, as far as the eye then reaches. */
const MOST_SPREAD = 3.2;
const SPREAD_REACH_MM = 11;
/** Points of a cord's path that belong to the lock: its face and its roller. */
const AT_LOCK = 2;
const BRACKET_MM = 22;
/** Without a lock the cords are drawn so far apart at least. */
const CLEAT_LANE_MM = 2.4;
/** Length to depth at which a board is still read with ease; a longer one is drawn deeper than it is. */
const READABLE_ASPECT = 8;
const MOST_STRETCH = 8;

/** The board seen from below, room edge at the top of the page, with what is screwed under it and its cords. */
export function drawBoardSheet(input: SheetInput): Drawing {
  const { shade, units } = input;
  const { board, lift } = shade;
  const stretch = depthStretch(input);
  const along = (xMm: number) => fromBoardEndMm(shade, xMm);
  const toPage = (xMm: number, zMm: number): Point => [
    board.leftMm + along(xMm),
    (board.depthMm - zMm) * stretch,
  ];
  return {
    id: "board",
    title: "Board",
    caption: `Seen from below, left as seen from the room, room edge at the top.${
      stretch === 1
        ? ""
        : ` The depth is drawn ${stretch} times as large as the length, so that ${lift.takeUp === "tube" ? "the parts can be told apart" : "the cords can be followed"}.`
    }`,
    primitives: [
      ...drawWood(input, toPage, stretch),
      ...(isLockSheet(input)
        ? [...drawEyes(input, toPage), ...drawCords(input, toPage), ...drawParts(input, toPage, stretch)]
        : []),
      ...(isCleatSheet(input) ? drawCleatBoard(input, toPage) : []),
      ...(isTubeSheet(input) ? drawTube(input, toPage) : []),
      ...drawTopRail(input, toPage, stretch),
      ...drawMeasures(input, toPage),
    ],
    facts: [
      { label: "Board", text: board.sectionName },
      lengthFact("Length", along(board.leftMm + board.lengthMm), units),
      ...(lift.takeUp === "lock"
        ? [
            ...board.eyes.map((eye, i) =>
              lengthFact(`Eye ${i + 1} from the left end`, along(eye.xMm), units),
            ),
            lengthFact("Middle of the lock from the left end", along(lift.seat.xMm), units),
          ]
        : []),
      ...(lift.takeUp === "cleat"
        ? [
            ...board.eyes.map((eye, i) =>
              lengthFact(
                `Eye ${i + 1}${lift.turn.column === i + 1 ? ", the last," : ""} from the left end`,
                along(eye.xMm),
                units,
              ),
            ),
            ...(lift.turn.column === undefined
              ? [lengthFact("Last eye from the left end", along(lift.turn.xMm), units)]
              : []),
          ]
        : []),
      ...(lift.takeUp !== "tube"
        ? []
        : [
            ...lift.spools.map((spool) =>
              lengthFact(`Spool ${spool.number} from the left end`, along(spool.xMm), units),
            ),
            ...lift.supports.map((support) =>
              lengthFact(`Support ${support.number} from the left end`, along(support.xMm), units),
            ),
            lengthFact("Middle of the drive from the left end", along(lift.drive.xMm), units),
          ]),
      ...railFacts(input),
      ...board.brackets.map((bracket) =>
        lengthFact(`Bracket ${bracket.number} from the left end`, along(bracket.xMm), units),
      ),
    ],
  };
}

function depthStretch({ shade, trueScale }: SheetInput): number {
  if (trueScale === true) return 1;
  const { lengthMm, depthMm } = shade.board;
  return Math.min(MOST_STRETCH, Math.max(1, Math.round(lengthMm / (depthMm * READABLE_ASPECT))));
}

function drawWood({ shade }: SheetInput, toPage: ToPage, stretch: number): Primitive[] {
  const { board } = shade;
  const [left, top] = toPage(board.leftMm, board.depthMm);
  const [right] = toPage(board.leftMm + board.lengthMm, board.depthMm);
  const height = board.depthMm * stretch;
  const middle = (left + right) / 2;
  const brackets =
    board.fixing === "brackets"
      ? board.brackets.map((bracket) =>
          rect(
            "bracket",
            {
              x: toPage(bracket.xMm, 0)[0] - BRACKET_MM / 2,
              y: top + height * 0.12,
              width: BRACKET_MM,
              height: height * 0.88,
            },
            { part: `bracket-${bracket.number}` },
          ),
        )
      : board.brackets.map(
          (screw): Primitive => ({
            kind: "marker",
            role: "screw",
            shape: "cross",
            at: toPage(screw.xMm, board.screwsZMm ?? board.depthMm / 2),
            paperMm: 2.6,
            part: `bracket-${screw.number}`,
          }),
        );
  return [
    rect("board", { x: left, y: top, width: right - left, height }, { part: "board" }),
    ...brackets,
    note([middle, top], "room", { shiftPaperMm: [0, -9.5] }),
    note([middle, top + height], shade.mount === "inside" ? "glass" : "wall", {
      shiftPaperMm: [0, 3],
      yields: true,
    }),
  ];
}

/** Furthest that a cord runs beside the middle of an eye, mm, and by how much this is spread. */
function laneSpread({ shade: { lift }, trueScale }: LockSheetInput): { reachMm: number; times: number } {
  const beside = lift.cords.flatMap((cord) =>
    cord.path.slice(0, -AT_LOCK).map((point) => Math.abs(point.zMm - eyeZ(lift))),
  );
  const reachMm = Math.max(0, ...beside);
  const times =
    reachMm > 0 && trueScale !== true ? Math.max(1, Math.min(MOST_SPREAD, SPREAD_REACH_MM / reachMm)) : 1;
  return { reachMm: reachMm * times, times };
}

function eyeZ({ eyes, seat }: CordLockLift): number {
  return eyes[0]?.zMm ?? seat.zMm;
}

/** As wide as the lanes that run through. Its wire is about a fifth of its outside diameter. */
function drawEyes(input: LockSheetInput, toPage: ToPage): Primitive[] {
  const { shade } = input;
  const wireMm = shade.lift.eyeDiameterMm / 5;
  const half = shade.lift.eyeDiameterMm / 2;
  const reach = input.trueScale === true ? half : Math.max(half, laneSpread(input).reachMm + 2);
  return shade.board.eyes.map((eye, i) => eyeBelow(eye, reach, wireMm, toPage, `eye-${i + 1}`));
}

/** Paths of the plan; only their distances beside the eyes are spread, which keeps their order. */
function drawCords(input: LockSheetInput, toPage: ToPage): Primitive[] {
  const { lift } = input.shade;
  const { times } = laneSpread(input);
  const middle = eyeZ(lift);
  return lift.cords.map((cord) =>
    line(
      "cord",
      cord.path.map((point, i) => {
        const atLock = i >= cord.path.length - AT_LOCK;
        return toPage(point.xMm, atLock ? point.zMm : middle + (point.zMm - middle) * times);
      }),
      { cord: cord.number, part: `cord-${cord.number}` },
    ),
  );
}

function drawParts({ shade }: LockSheetInput, toPage: ToPage, stretch: number): Primitive[] {
  const { board, lift } = shade;
  const [lockX, lockY] = toPage(lift.seat.xMm, lift.seat.zMm);
  const height = lift.housingWidthMm * stretch;
  return [
    rect(
      "housing",
      {
        x: lockX - lift.housingLengthMm / 2,
        y: lockY - height / 2,
        width: lift.housingLengthMm,
        height,
      },
      { part: "lock" },
    ),
    ...lift.seat.screwsMm.map((screw) => screwMark(toPage(screw.xMm, screw.zMm), "lock", 1.6)),
    ...lift.cords.map((cord) => ({
      ...cordTag(toPage(cord.columnX, board.depthMm), cord.number, [0, -4.5]),
      stack: "columns",
    })),
    callout([lockX, lockY - height / 2], "lock", [lift.controlSide === "right" ? -5 : 5, -9.5], {
      part: "lock",
    }),
  ];
}

/** Eyes and cords; all cords run into the last eye side by side and go down there. */
function drawCleatBoard({ shade, trueScale }: CleatSheetInput, toPage: ToPage): Primitive[] {
  const { board, lift } = shade;
  const { turn } = lift;
  const stepMm = trueScale === true ? lift.cordDiameterMm : Math.max(CLEAT_LANE_MM, lift.cordDiameterMm);
  const lanesMm = lift.cords.length * stepMm;
  const eye = (xMm: number, diameterMm: number, part: string): Primitive =>
    eyeBelow({ xMm, zMm: turn.zMm }, Math.max(diameterMm / 2, lanesMm), diameterMm / 5, toPage, part);
  const inward = lift.controlSide === "right" ? lift.cords : [...lift.cords].reverse();
  const [turnX, turnY] = toPage(turn.xMm, turn.zMm);
  return [
    ...lift.eyes.flatMap(({ xMm }, i) =>
      turn.column === i + 1 ? [] : [eye(xMm, lift.eyeDiameterMm, `eye-${i + 1}`)],
    ),
    eye(turn.xMm, turn.diameterMm, "last-eye"),
    ...inward.map((cord, i): Primitive => {
      // A farther cord keeps the outer lane, so that the nearer one, which starts in the middle, joins without crossing.
      const lane = turn.zMm + (inward.length - 1 - i) * stepMm;
      return line(
        "cord",
        [toPage(cord.columnX, turn.zMm), toPage(cord.columnX, lane), toPage(turn.xMm, lane)],
        {
          cord: cord.number,
          part: `cord-${cord.number}`,
        },
      );
    }),
    ...lift.cords.map(
      (cord): Primitive => ({
        ...cordTag(toPage(cord.columnX, board.depthMm), cord.number, [0, -4.5]),
        stack: "columns",
      }),
    ),
    callout([turnX, turnY - turn.diameterMm / 2], "all down", [lift.controlSide === "right" ? -5 : 5, -9.5], {
      part: "last-eye",
      yields: true,
    }),
  ];
}

/** Tube and all that sits on it; each cord drops off the room side of its own spool. */
function drawTube({ shade }: TubeSheetInput, toPage: ToPage): Primitive[] {
  const { board, lift } = shade;
  const { drive } = lift;
  const [driveX, driveY] = toPage(drive.xMm, drive.zMm + drive.depthMm / 2);
  return [
    ...tubeBelow(lift, toPage),
    ...drive.screwsMm.map((screw) => screwMark(toPage(screw.xMm, screw.zMm), "drive", 1.6)),
    ...lift.cords.map(
      (cord): Primitive => ({
        ...cordTag(toPage(cord.columnX, board.depthMm), cord.number, [0, -4.5]),
        stack: "columns",
      }),
    ),
    callout([driveX, driveY], "drive", [driveX > board.leftMm + board.lengthMm / 2 ? 5 : -5, -9.5], {
      part: "drive",
      yields: true,
    }),
  ];
}

/** Eyes, cords and lock of a top that comes down: a rig of its own between wall edge and lift. */
function drawTopRail({ shade }: SheetInput, toPage: ToPage, stretch: number): Primitive[] {
  const { topRail } = shade.lift;
  if (topRail === undefined) return [];
  const { seat, housingLengthMm, housingWidthMm, eyeDiameterMm } = topRail;
  const [lockX, lockY] = toPage(seat.xMm, seat.zMm);
  const height = housingWidthMm * stretch;
  return [
    ...topRail.eyes.map((eye, i) =>
      eyeBelow(eye, eyeDiameterMm / 2, eyeDiameterMm / 5, toPage, `rail-eye-${i + 1}`),
    ),
    ...topRail.cords.map(({ path, column }) =>
      line(
        "cord",
        path.map(({ xMm, zMm }) => toPage(xMm, zMm)),
        { part: `rail-cord-${column}` },
      ),
    ),
    rect(
      "housing",
      { x: lockX - housingLengthMm / 2, y: lockY - height / 2, width: housingLengthMm, height },
      { part: "rail-lock" },
    ),
    ...seat.screwsMm.map((screw) => screwMark(toPage(screw.xMm, screw.zMm), "rail-lock", 1.6)),
    callout([lockX, lockY - height / 2], "lock of the top rail", [topRail.side === "right" ? -5 : 5, -9.5], {
      part: "rail-lock",
      yields: true,
    }),
  ];
}

function railFacts({ shade, units }: SheetInput): Fact[] {
  const { topRail } = shade.lift;
  if (topRail === undefined) return [];
  const { seat, eyes, heldN, pullN } = topRail;
  return [
    lengthFact("Eyes of the top rail from the wall edge", eyes[0]?.zMm ?? 0, units),
    lengthFact("Lock of the top rail from the left end", fromBoardEndMm(shade, seat.xMm), units),
    lengthFact("Lock of the top rail from the wall edge", seat.zMm, units),
    { label: "Weight on the cords of the top rail, up", text: forceText(heldN, units) },
    { label: "Pull on them", text: forceText(pullN, units) },
  ];
}

/** All from the left end: eyes or spools on one line, lock or drive, supports and brackets on the next. */
function drawMeasures(input: SheetInput, toPage: ToPage): Primitive[] {
  const { shade, units } = input;
  const { board, lift } = shade;
  const origin = toPage(board.leftMm, 0);
  const at = (xMm: number): Point => [toPage(xMm, 0)[0], origin[1]];
  const one = (xMm: number, running: string, offset: number, rest: Record<string, string>) =>
    dimensionOf({ from: origin, to: at(xMm), offset, running, ...rest }, units);
  const bracketName = board.fixing === "brackets" ? "bracket" : "screw";
  const parts =
    lift.takeUp === "cleat"
      ? [
          ...board.eyes.map((eye, i) => one(eye.xMm, "eyes", -8, { part: `eye-${i + 1}` })),
          ...(lift.turn.column === undefined
            ? [one(lift.turn.xMm, "fixings", -24, { label: "last eye", part: "last-eye" })]
            : []),
        ]
      : lift.takeUp === "lock"
        ? [
            ...board.eyes.map((eye, i) => one(eye.xMm, "eyes", -8, { part: `eye-${i + 1}` })),
            one(lift.seat.xMm, "fixings", -24, { label: "lock", part: "lock" }),
          ]
        : [
            ...lift.spools.map(({ xMm, number }) => one(xMm, "eyes", -8, { part: `spool-${number}` })),
            ...lift.supports.map(({ xMm, number }) =>
              one(xMm, "supports", -24, { label: "support", part: `support-${number}` }),
            ),
            one(lift.drive.xMm, "supports", -24, { label: "drive", part: "drive" }),
          ];
  // A tube takes a line of its own; the fixings then stand on the third.
  const fixingsOffset = lift.takeUp === "tube" ? -50 : -24;
  return [
    ...parts,
    one(board.leftMm + board.lengthMm, "eyes", -8, {
      part: "board",
      ...figureRef(input, "measure.board-length"),
    }),
    ...board.brackets.map((bracket) =>
      one(bracket.xMm, "fixings", fixingsOffset, { label: bracketName, part: `bracket-${bracket.number}` }),
    ),
  ];
}
