import type { ShadePlan } from "../plan/index.ts";
import { columnFromEdge, hemInWords, hemIsCurved, ringFromHemMm, rowsToSew } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { PlanList } from "./plan-list.ts";
import { type Cell, textAndMm } from "./table.ts";

/** Every ring, from the hem up and from an edge as seen from the room; pocket lines and lines on the flat cloth where there are any. */
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
    "fromRightEdge",
    "fromRightEdgeMm",
  ],
  rowsOfShade: (shade, { units }) => [
    ...(shade.existing === undefined ? [...pocketRows(shade, units), ...clothRows(shade, units)] : []),
    ...ringRows(shade, units),
  ],
};

const BLANK: readonly Cell[] = ["", ""];

function ringRows(shade: ShadePlan, units: UnitChoice): Cell[][] {
  const { roomName, windowName, grid, size, existing } = shade;
  const mark = hemIsCurved(shade.form) ? `ring, up from ${hemInWords(shade.form)}` : "ring";
  return rowsToSew(grid, existing).flatMap(({ row, columns }) =>
    columns.map((column) => {
      const { edge, mm } = columnFromEdge(shade, column.xMm);
      const inMm = textAndMm(mm, units);
      return [
        roomName,
        windowName,
        mark,
        row.number,
        column.number,
        ...textAndMm(ringFromHemMm(row, column.xMm, size.finishedWidthMm), units),
        ...(edge === "left" ? [...inMm, ...BLANK] : [...BLANK, ...inMm]),
      ];
    }),
  );
}

function clothRows({ roomName, windowName, form }: ShadePlan, units: UnitChoice): Cell[][] {
  return form.marks.map(({ label, along, atMm }) => [
    roomName,
    windowName,
    `${label} on the flat face`,
    "",
    "",
    ...(along === "y" ? textAndMm(atMm, units) : BLANK),
    ...(along === "x" ? textAndMm(atMm, units) : BLANK),
    ...BLANK,
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
    ...BLANK,
    ...BLANK,
  ]);
}
