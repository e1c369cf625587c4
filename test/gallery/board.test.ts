import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import { outside, wide } from "./windows.ts";

draws("board", () => {
  const { plan, shade } = outside();
  return place(drawSheet("board", plan, shade), PAGE);
});

draws("board-wide", () => {
  const { plan, shade } = wide();
  return place(drawSheet("board", plan, shade), PAGE);
});
