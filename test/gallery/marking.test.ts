import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";
import { banded, outside, ribbed, small, tall, wide } from "./windows.ts";

draws("marking", () => {
  const { plan, shade } = outside();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("marking-pockets", () => {
  const { plan, shade } = ribbed();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("marking-small", () => {
  const { plan, shade } = small();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("marking-tall", () => {
  const { plan, shade } = tall();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("marking-corner", () => {
  const { plan, shade } = banded();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("marking-joins", () => {
  const { plan, shade } = wide();
  return place(drawSheet("marking", plan, shade), PAGE);
});
