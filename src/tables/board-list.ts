import type { Plan, ShadePlan } from "../plan/index.ts";
import { fromBoardEndMm } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import { type Cell, type Table, textAndMm } from "./table.ts";

/** Every mark on the board: from its left end seen from the room, and from the wall. */
export function boardList(plan: Plan): Table {
  return {
    name: "board-list",
    header: ["room", "window", "mark", "number", "fromLeftEnd", "fromLeftEndMm", "fromWall", "fromWallMm"],
    rows: plan.shades.flatMap((shade) => boardRows(shade, plan.units)),
  };
}

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
    ...board.eyes.map((eye, i) => row("screw eye", i + 1, eye.xMm, eye.zMm)),
    ...(lift.takeUp === "lock"
      ? [
          row("lock, centre", "", lift.seat.xMm, lift.seat.zMm),
          ...lift.seat.screwsMm.map((screw, i) => row("lock screw", i + 1, screw.xMm, screw.zMm)),
        ]
      : []),
    ...(lift.takeUp === "cleat" ? [row("last eye", "", lift.turn.xMm, lift.turn.zMm)] : []),
    ...(lift.takeUp !== "tube"
      ? []
      : [
          row("tube, one end", "", lift.tube.fromMm, lift.tube.zMm),
          row("tube, other end", "", lift.tube.toMm, lift.tube.zMm),
          ...lift.spools.map((spool) => row("spool, middle", spool.number, spool.xMm, lift.tube.zMm)),
          ...lift.supports.map((one) => row("tube support", one.number, one.xMm, lift.tube.zMm)),
          row("drive, middle", "", lift.drive.xMm, lift.drive.zMm),
          ...lift.drive.screwsMm.map((screw, i) => row("drive screw", i + 1, screw.xMm, screw.zMm)),
        ]),
    ...board.brackets.map((bracket) =>
      row(board.fixing === "brackets" ? "bracket" : "screw up", bracket.number, bracket.xMm),
    ),
  ];
}
