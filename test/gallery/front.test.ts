import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { banded, outside, ribbed, wide } from "./windows.ts";

draws("front", () => {
  const { plan, shade } = outside();
  return place(drawSheet("front", plan, shade), PAGE);
});

draws("front-phone", () => {
  const { plan, shade } = outside();
  return place(drawSheet("front", plan, shade), PHONE.fit, PHONE.options);
});

draws("front-half", () => {
  const { plan, shade } = ribbed();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("front-raised", () => {
  const { plan, shade } = wide();
  return place(drawSheet("front", plan, shade, { raise: 1 }), PAGE);
});

draws("front-bands", () => {
  const { plan, shade } = banded();
  return place(drawSheet("front", plan, shade), PAGE);
});

draws("front-bands-half", () => {
  const { plan, shade } = banded();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});
