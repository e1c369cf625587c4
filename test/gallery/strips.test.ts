import { drawMarkingStrips, drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import { outside } from "./windows.ts";

draws("strips", () => {
  const { plan, shade } = outside();
  return place(drawSheet("strips", plan, shade), PAGE);
});

draws("strip-columns-full-size", () => {
  const { plan, shade } = outside();
  const [, columns] = drawMarkingStrips(plan, shade);
  if (columns === undefined) throw new Error("invalid strips: no columns");
  return place(columns, { scale: 1 });
});
