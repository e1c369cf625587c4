import type { ShadePlan } from "../plan/index.ts";
import { ringFromHemMm, rowsToSew } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { PlanList } from "./plan-list.ts";
import { type Cell, textAndMm } from "./table.ts";

/** Every ring, from the hem up and from the left seen from the room; pocket lines and lines on the flat cloth where there are any. */
export const MARKING_LIST: PlanList = {
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
  rowsOfShade: (shade, { units }) => [
    ...(shade.existing === undefined ? [...pocketRows(shade, units), ...clothRows(shade, units)] : []),
    ...ringRows(shade, units),
  ],
};

function ringRows({ roomName, windowName, grid, size, existing }: ShadePlan, units: UnitChoice): Cell[][] {
  return rowsToSew(grid, existing).flatMap(({ row, columns }) =>
    columns.map((column) => [
      roomName,
      windowName,
      "ring",
      row.number,
      column.number,
      ...textAndMm(ringFromHemMm(row, column.xMm, size.finishedWidthMm), units),
      ...textAndMm(column.xMm, units),
    ]),
  );
}

function clothRows({ roomName, windowName, form }: ShadePlan, units: UnitChoice): Cell[][] {
  return form.marks.map(({ label, along, atMm }) => [
    roomName,
    windowName,
    `${label} on the flat face`,
    "",
    "",
    ...(along === "y" ? textAndMm(atMm, units) : ["", ""]),
    ...(along === "x" ? textAndMm(atMm, units) : ["", ""]),
  ]);
}

function pocketRows({ roomName, windowName, cloth }: ShadePlan, units: UnitChoice): Cell[][] {
  return cloth.ribLines.map((line) => [
    roomName,
    windowName,
    line.between
      ? "pocket line before it is sewn, between this row and the next"
      : "pocket line before it is sewn",
    line.row,
    "",
    ...textAndMm(line.onLiningMm, units),
    "",
    "",
  ]);
}
