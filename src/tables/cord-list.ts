import type { ShadePlan } from "../plan/index.ts";
import type { Lift } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { PlanList } from "./plan-list.ts";
import { type Cell, textAndMm } from "./table.ts";

const NONE: Cell[] = ["", ""];

/** Every cord: where it enters, its slot, its turn in the lock, and what makes up its length. */
export const CORD_LIST: PlanList = {
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
    "wrapsOnSpool",
    "wrapsOnSpoolMm",
    "knots",
    "knotsMm",
    "cut",
    "cutMm",
  ],
  rowsOfShade: (shade, { units }) => [...liftCordRows(shade, units), ...railCordRows(shade, units)],
};

/** Each is as long as it ever is with the rail let down: what it has risen by then is the rail’s drop. */
function railCordRows({ roomName, windowName, lift }: ShadePlan, units: UnitChoice): Cell[][] {
  const { topRail } = lift;
  if (topRail === undefined) return [];
  const { dropMm, tailDownMm } = topRail;
  return topRail.cords.map(({ column, xMm, runMm, knotsMm, cutMm }) => [
    roomName,
    windowName,
    `rail ${column}`,
    column,
    ...textAndMm(xMm, units),
    ...["", "", ""],
    ...textAndMm(dropMm, units),
    ...textAndMm(runMm, units),
    ...textAndMm(tailDownMm, units),
    ...NONE,
    ...textAndMm(knotsMm, units),
    ...textAndMm(cutMm, units),
  ]);
}

/** A cord on a spool has no lock to enter, runs along no board and has no tail, but wraps that stay on it. */
function liftCordRows({ roomName, windowName, lift }: ShadePlan, units: UnitChoice): Cell[][] {
  const row = (cord: Lift["cords"][number], entry: Cell[], along: Cell[]): Cell[] => [
    roomName,
    windowName,
    cord.number,
    cord.number,
    ...textAndMm(cord.columnX, units),
    ...entry,
    ...textAndMm(cord.riseMm, units),
    ...along,
    ...textAndMm(cord.knotsMm, units),
    ...textAndMm(cord.cutMm, units),
  ];
  const runAndTail = ({ runMm, tailMm }: { runMm: number; tailMm: number }): Cell[] => [
    ...textAndMm(runMm, units),
    ...textAndMm(tailMm, units),
    ...NONE,
  ];
  const noEntry: Cell[] = ["", "", ""];
  if (lift.takeUp === "lock") {
    return lift.cords.map((cord) => {
      const entry = [cord.entersFrom, cord.slot, lift.threading.indexOf(cord.number) + 1];
      return row(cord, entry, runAndTail(cord));
    });
  }
  if (lift.takeUp === "cleat") return lift.cords.map((cord) => row(cord, noEntry, runAndTail(cord)));
  return lift.cords.map((cord) => row(cord, noEntry, [...NONE, ...NONE, ...textAndMm(cord.wrapsMm, units)]));
}
