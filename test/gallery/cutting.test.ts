import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import { banded, outside, patterned, ribbed, sideways, wide } from "./windows.ts";

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

draws("cutting-bands", () => {
  const { plan, shade } = banded();
  return place(drawSheet("cutting", plan, shade), PAGE);
});

draws("cutting-sideways", () => {
  const { plan, shade } = sideways();
  return place(drawSheet("cutting", plan, shade), PAGE);
});

draws("cutting-columns", () => {
  const { plan, shade } = patterned();
  return place(drawSheet("cutting", plan, shade), PAGE);
});
