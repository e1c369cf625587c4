import { figureRuleOf, type Worked } from "../figures/index.ts";
import {
  acrossOfBoardMm,
  type BoardOnHead,
  type Bracket,
  fromBoardEndMm,
  type Lift,
  type MountedBoard,
} from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { FIT_SLACK } from "../units/index.ts";
import type { BoardInput } from "./board-input.ts";
import { type FixingFault, placeFixings } from "./place-fixings.ts";

/** Along the board. */
const BRACKET_WIDTH = sourced(20, "mm", cite("our-choice", "a common bracket; measure your own"));
const SCREW_ROOM = sourced(10, "mm", cite("our-choice", "head of a screw and the driver beside it"));
/** Kept between a fixing and an eye, a spool or what else is screwed up from below. */
const BESIDE_MM = 3;
/** Nearer to each other they only get in each other's way. */
export const NEAREST_FIXINGS_MM = 100;

/** Brackets or screws along the board, each `widthMm` wide, with what of the maker’s wishes they break. */
export interface Fixings {
  kind: MountedBoard["fixing"];
  brackets: Bracket[];
  faults: FixingFault[];
  widthMm: number;
}

/** What moves the places of the fixings beside their own settings: what hangs under the board. */
export const PLACED = [
  "lift/kind",
  "lift/controlSide",
  "lift/seat",
  "lift/seatMm",
  "lift/eye",
  "lift/turnEye",
  "lift/lock",
  "lift/drive",
  "lift/tube",
  "columns/edgeInsetMm",
  "fold/topDropMm",
  "figure:shape.columns",
  "figure:measure.board-length",
];

const FEWEST = figureRuleOf<{ kind: MountedBoard["fixing"] }>()({
  id: "board.fixings",
  label: ({ kind }) => `${kind === "brackets" ? "Brackets" : "Screws up through the board"}, at least`,
  symbol: "n",
  unit: "count",
  formula: "max(2, ceil((B − 2·e) / m) + 1)",
  inputs: {
    B: ["mm", "length of the board", "figure:measure.board-length"],
    e: ["mm", "outer ones from the ends", "board/bracketEndMm", "shade/mount"],
    m: ["mm", "largest distance of two", "board/bracketSpacingMm"],
  },
  cite: cite("from-memory", "within 4 in of the ends, at most 24 to 30 in apart"),
  note: "one more where something under the board stands in the way",
  compute: ({ B, e, m }) => Math.max(2, Math.ceil((B - 2 * e) / m - FIT_SLACK) + 1),
});

/**
 * Brackets under the board, or screws up through it for an inside mount, clear of what hangs under it.
 * Placed from the control side, so that a shade worked on the left is the mirror image of one on the right.
 */
export function planFixings(input: BoardInput, leftMm: number): Worked<Fixings> {
  const { shade, size, lift } = input;
  const kind = shade.mount === "inside" ? "screwed-up" : "brackets";
  const widthMm = kind === "brackets" ? BRACKET_WIDTH.value : SCREW_ROOM.value;
  const on: BoardOnHead = { size, board: { leftMm }, lift };
  const lengthMm = fromBoardEndMm(on, leftMm + size.boardLengthMm);
  const { bracketEndMm, bracketSpacingMm } = shade.making.board;
  const endMm = Math.max(widthMm / 2, Math.min(bracketEndMm, lengthMm / 4));
  const largestMm = Math.max(bracketSpacingMm, NEAREST_FIXINGS_MM);
  const turned = lift.controlSide === "right";
  /** Along the board from its end on the control side. */
  const along = (xMm: number) => (turned ? lengthMm - fromBoardEndMm(on, xMm) : fromBoardEndMm(on, xMm));
  const fewest =
    lengthMm < 3 * widthMm ? undefined : FEWEST.figure({ B: lengthMm, e: endMm, m: largestMm }, { kind });
  const { placesMm, faults } = placeFixings({
    fromMm: 0,
    toMm: lengthMm,
    endMm,
    largestMm,
    widthMm,
    fewest: fewest?.value ?? 1,
    keepOut: keepOut(lift, shade.eye.outsideDiameterMm, along),
  });
  const places = placesMm.map((at) => acrossOfBoardMm(on, turned ? lengthMm - at : at)).sort((a, b) => a - b);
  const brackets = places.map((xMm, i) => ({ number: i + 1, xMm }));
  return { values: { kind, brackets, faults, widthMm }, workings: fewest === undefined ? [] : [fewest] };
}

function keepOut(lift: Lift, eyeMm: number, along: (x: number) => number): [number, number][] {
  const around = (x: number, half: number): [number, number] => [
    along(x) - half - BESIDE_MM,
    along(x) + half + BESIDE_MM,
  ];
  const rail = lift.topRail;
  const railLock = rail === undefined ? [] : [around(rail.seat.xMm, rail.housingLengthMm / 2)];
  const railEyes = rail === undefined ? [] : rail.eyes.map(({ xMm }) => around(xMm, eyeMm / 2));
  if (lift.takeUp === "lock") {
    return [
      ...railLock,
      ...lift.eyes.map(({ xMm }) => around(xMm, eyeMm / 2)),
      around(lift.seat.xMm, lift.housingLengthMm / 2),
    ];
  }
  if (lift.takeUp === "cleat") {
    return [
      ...railLock,
      ...lift.eyes.map(({ xMm }) => around(xMm, eyeMm / 2)),
      around(lift.turn.xMm, lift.turn.diameterMm / 2),
    ];
  }
  return [
    ...railLock,
    ...railEyes,
    ...lift.spools.map(({ xMm, lengthMm }) => around(xMm, lengthMm / 2)),
    ...lift.supports.map(({ xMm }) => around(xMm, lift.supportLengthMm / 2)),
    around(lift.drive.xMm, lift.drive.lengthMm / 2),
  ];
}
