import type { Plan, ShadePlan } from "../plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import { both, type Cell, type Table } from "./table.ts";

/** Every ring, from the hem up and from the left seen from the room, and the pocket lines where there are ribs. */
export function markingList(plan: Plan): Table {
  return {
    name: "marking-list",
    header: [
      "room",
      "window",
      "mark",
      "row",
      "column",
      "fromHem",
      "fromHemMm",
      "fromLeftEdge",
      "fromLeftEdgeMm",
    ],
    rows: plan.shades.flatMap((shade) => [...pocketRows(shade, plan.units), ...ringRows(shade, plan.units)]),
  };
}

function ringRows({ roomName, windowName, grid }: ShadePlan, units: UnitChoice): Cell[][] {
  return grid.rows.flatMap((row) =>
    grid.columns.map((column) => [
      roomName,
      windowName,
      "ring",
      row.number,
      column.number,
      ...both(row.fromHemMm, units),
      ...both(column.xMm, units),
    ]),
  );
}

function pocketRows({ roomName, windowName, cloth }: ShadePlan, units: UnitChoice): Cell[][] {
  return cloth.ribLines.map((line) => [
    roomName,
    windowName,
    "pocket line before it is sewn",
    line.row,
    "",
    ...both(line.onLiningMm, units),
    "",
    "",
  ]);
}
