import { drawLegend, drawSheet, place } from "../../src/drawing/index.ts";
import { LINE_SHEETS } from "../../src/shade-plan/index.ts";
import { draws } from "./gallery.ts";
import { wide } from "./windows.ts";

draws("legend", () => {
  const { plan, shade } = wide();
  return place(drawLegend(LINE_SHEETS.map((kind) => drawSheet(kind, plan, shade))), { scale: 1 });
});
