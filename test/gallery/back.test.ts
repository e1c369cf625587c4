import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { leftHanded, outside, ribbed, wide } from "./windows.ts";

draws("back", () => {
  const { plan, shade } = outside();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("back-left", () => {
  const { plan, shade } = leftHanded();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("back-half", () => {
  const { plan, shade } = ribbed();
  return place(drawSheet("back", plan, shade, { raise: 0.5 }), PAGE);
});

draws("back-wide-phone", () => {
  const { plan, shade } = wide();
  return place(drawSheet("back", plan, shade), PHONE.fit, PHONE.options);
});
