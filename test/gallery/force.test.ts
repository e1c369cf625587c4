import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { leftHanded, outside, spring } from "./windows.ts";

draws("force", () => {
  const { plan, shade } = outside();
  return place(drawSheet("force", plan, shade, { raise: 0.6 }), PAGE);
});

draws("force-phone", () => {
  const { plan, shade } = leftHanded();
  return place(drawSheet("force", plan, shade), PHONE.fit, PHONE.options);
});

draws("force-spring", () => {
  const { plan, shade } = spring();
  return place(drawSheet("force", plan, shade, { raise: 1 }), PAGE);
});
