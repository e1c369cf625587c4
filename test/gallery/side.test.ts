import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import { outside, ribbed } from "./windows.ts";

draws("side", () => {
  const { plan, shade } = outside();
  return place(drawSheet("side", plan, shade), PAGE);
});

draws("side-half", () => {
  const { plan, shade } = outside();
  return place(drawSheet("side", plan, shade, { raise: 0.5 }), PAGE);
});

draws("side-raised", () => {
  const { plan, shade } = ribbed();
  return place(drawSheet("side", plan, shade, { raise: 1 }), PAGE);
});
