import type { Working } from "../figures/index.ts";
import { citeText } from "../sources/index.ts";
import type { PlanList } from "./plan-list.ts";
import type { Cell } from "./table.ts";

/** Every figure with its formula, what went in and where it comes from, in millimetres and kilograms. */
export const WORKINGS_LIST: PlanList = {
  name: "workings-list",
  header: [
    "room",
    "window",
    "figure",
    "label",
    "symbol",
    "formula",
    "inputs",
    "value",
    "unit",
    "source",
    "note",
  ],
  rowsOfJob: ({ workings }) => workings.map((working) => row("", "", working)),
  rowsOfShade: ({ roomName, windowName, workings }) =>
    workings.map((working) => row(roomName, windowName, working)),
};

function row(room: string, window: string, working: Working): Cell[] {
  return [
    room,
    window,
    working.id,
    working.label,
    working.symbol,
    working.formula,
    working.inputs
      .map(({ symbol, value, unit, label }) => `${symbol} = ${tidy(value)} ${unit} (${label})`)
      .join("; "),
    tidy(working.value),
    working.unit,
    citeText(working.cite),
    working.note ?? "",
  ];
}

/** Ten significant figures: exact to the eye and free of binary dust. */
function tidy(value: number): number {
  return Number(value.toPrecision(10));
}
