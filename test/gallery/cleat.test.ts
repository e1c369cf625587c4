import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { cleat } from "./windows.ts";

draws("board-cleat", () => {
  const { plan, shade } = cleat();
  return place(drawSheet("board", plan, shade), PAGE);
});

draws("back-cleat", () => {
  const { plan, shade } = cleat();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("front-cleat-half", () => {
  const { plan, shade } = cleat();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("lock-cleat", () => {
  const { plan, shade } = cleat();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("lock-cleat-phone", () => {
  const { plan, shade } = cleat();
  return place(drawSheet("lock", plan, shade), PHONE.fit, PHONE.options);
});
