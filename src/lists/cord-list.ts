import type { Plan } from "../plan/index.ts";
import { both, type Table } from "./table.ts";

/** Every cord: where it enters, its slot, its turn in the lock, and what makes up its length. */
export function cordList(plan: Plan): Table {
  return {
    name: "cord-list",
    header: [
      "room",
      "window",
      "cord",
      "column",
      "fromLeftEdge",
      "fromLeftEdgeMm",
      "entersFrom",
      "slot",
      "turn",
      "rise",
      "riseMm",
      "alongBoard",
      "alongBoardMm",
      "tail",
      "tailMm",
      "knots",
      "knotsMm",
      "cut",
      "cutMm",
    ],
    rows: plan.shades.flatMap(({ roomName, windowName, lift }) =>
      lift.cords.map((cord) => [
        roomName,
        windowName,
        cord.number,
        cord.number,
        ...both(cord.columnX, plan.units),
        cord.entersFrom,
        cord.slot,
        lift.threading.indexOf(cord.number) + 1,
        ...both(cord.riseMm, plan.units),
        ...both(cord.runMm, plan.units),
        ...both(cord.tailMm, plan.units),
        ...both(cord.knotsMm, plan.units),
        ...both(cord.cutMm, plan.units),
      ]),
    ),
  };
}
