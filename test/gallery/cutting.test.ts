import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import { outside, ribbed, wide } from "./windows.ts";

draws("cutting", () => {
  const { plan, shade } = outside();
  return place(drawSheet("cutting", plan, shade), PAGE);
});

draws("cutting-layers", () => {
  const { plan, shade } = ribbed();
  return place(drawSheet("cutting", plan, shade), PAGE);
});

draws("cutting-half-drop", () => {
  const { plan, shade } = wide();
  return place(drawSheet("cutting", plan, shade), PAGE);
});
