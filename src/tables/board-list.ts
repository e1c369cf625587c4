import type { ShadePlan } from "../plan/index.ts";
import { type BoardMark, boardMarks, fromBoardEndMm } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { PlanList } from "./plan-list.ts";
import { type Cell, textAndMm } from "./table.ts";

/** Every mark on the board: from its left end seen from the room, and from the wall. */
export const BOARD_LIST: PlanList = {
  name: "board-list",
  header: ["room", "window", "mark", "number", "fromLeftEnd", "fromLeftEndMm", "fromWall", "fromWallMm"],
  rowsOfShade: (shade, { units }) => boardRows(shade, units),
};

function boardRows(shade: ShadePlan, units: UnitChoice): Cell[][] {
  const { roomName, windowName, board, lift } = shade;
  const row = (mark: string, number: Cell, xMm: number, zMm?: number): Cell[] => [
    roomName,
    windowName,
    mark,
    number,
    ...textAndMm(fromBoardEndMm(shade, xMm), units),
    ...(zMm === undefined ? ["", ""] : textAndMm(zMm, units)),
  ];
  return [
    ...boardMarks(shade).flatMap(({ what, number, xMm, zMm, screwsMm = [] }) => [
      row(MARKS[what].mark, number ?? "", xMm, zMm),
      ...screwsMm.map((screw, i) => row(`${MARKS[what].part} screw`, i + 1, screw.xMm, screw.zMm)),
    ]),
    ...(lift.takeUp === "tube"
      ? [
          row("tube, one end", "", lift.tube.fromMm, lift.tube.zMm),
          row("tube, other end", "", lift.tube.toMm, lift.tube.zMm),
        ]
      : []),
    ...board.brackets.map((bracket) =>
      row(board.fixing === "brackets" ? "bracket" : "screw up", bracket.number, bracket.xMm),
    ),
  ];
}

/** Each mark as a list has it, and the part as its screws are named by. */
const MARKS: Record<BoardMark["what"], { mark: string; part: string }> = {
  eye: { mark: "screw eye", part: "eye" },
  "eye-and-last-eye": { mark: "screw eye and last eye", part: "eye" },
  "last-eye": { mark: "last eye", part: "eye" },
  lock: { mark: "lock, centre", part: "lock" },
  spool: { mark: "spool, middle", part: "spool" },
  support: { mark: "tube support", part: "support" },
  drive: { mark: "drive, middle", part: "drive" },
  "rail-eye": { mark: "screw eye of the top rail", part: "eye" },
  "rail-lock": { mark: "lock of the top rail, centre", part: "rail lock" },
};
