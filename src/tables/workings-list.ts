import type { Working } from "../figures/index.ts";
import type { Plan } from "../plan/index.ts";
import { citeText } from "../sources/index.ts";
import type { Cell, Table } from "./table.ts";

/** Every figure with its formula, what went in and where it comes from, in millimetres and kilograms. */
export function workingsList(plan: Plan): Table {
  const row = (room: string, window: string, working: Working): Cell[] => [
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
  return {
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
    rows: [
      ...plan.workings.map((working) => row("", "", working)),
      ...plan.shades.flatMap((shade) =>
        shade.workings.map((working) => row(shade.roomName, shade.windowName, working)),
      ),
    ],
  };
}

/** Ten significant figures: exact to the eye and free of binary dust. */
function tidy(value: number): number {
  return Number(value.toPrecision(10));
}
