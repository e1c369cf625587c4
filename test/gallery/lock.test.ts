import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { leftHanded, outside, wide } from "./windows.ts";

draws("lock", () => {
  const { plan, shade } = outside();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("lock-left", () => {
  const { plan, shade } = leftHanded();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("lock-six-slots-phone", () => {
  const { plan, shade } = wide();
  return place(drawSheet("lock", plan, shade), PHONE.fit, PHONE.options);
});
