import { drawSheet, place } from "../../src/drawing/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { pleatedBalloon, relaxed, tailed, tailedPressed } from "./windows.ts";

draws("front-relaxed", () => {
  const { plan, shade } = relaxed();
  return place(drawSheet("front", plan, shade), PAGE);
});

draws("front-relaxed-half", () => {
  const { plan, shade } = relaxed();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("front-relaxed-raised", () => {
  const { plan, shade } = relaxed();
  return place(drawSheet("front", plan, shade, { raise: 1 }), PAGE);
});

draws("back-relaxed", () => {
  const { plan, shade } = relaxed();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("side-relaxed-raised", () => {
  const { plan, shade } = relaxed();
  return place(drawSheet("side", plan, shade, { raise: 1 }), PAGE);
});

draws("marking-relaxed", () => {
  const { plan, shade } = relaxed();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("front-tailed", () => {
  const { plan, shade } = tailed();
  return place(drawSheet("front", plan, shade), PAGE);
});

draws("front-tailed-half", () => {
  const { plan, shade } = tailed();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("front-tailed-raised", () => {
  const { plan, shade } = tailed();
  return place(drawSheet("front", plan, shade, { raise: 1 }), PAGE);
});

draws("back-tailed-raised", () => {
  const { plan, shade } = tailed();
  return place(drawSheet("back", plan, shade, { raise: 1 }), PAGE);
});

draws("side-tailed", () => {
  const { plan, shade } = tailed();
  return place(drawSheet("side", plan, shade), PAGE);
});

draws("marking-tailed", () => {
  const { plan, shade } = tailed();
  return place(drawSheet("marking", plan, shade), PAGE);
});

draws("front-tailed-pressed-raised-phone", () => {
  const { plan, shade } = tailedPressed();
  return place(drawSheet("front", plan, shade, { raise: 1 }), PHONE.fit, PHONE.options);
});

draws("front-tailed-pressed-half", () => {
  const { plan, shade } = tailedPressed();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("front-pleated-balloon", () => {
  const { plan, shade } = pleatedBalloon();
  return place(drawSheet("front", plan, shade), PAGE);
});

draws("front-pleated-balloon-half", () => {
  const { plan, shade } = pleatedBalloon();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("front-pleated-balloon-raised", () => {
  const { plan, shade } = pleatedBalloon();
  return place(drawSheet("front", plan, shade, { raise: 1 }), PAGE);
});

draws("back-pleated-balloon", () => {
  const { plan, shade } = pleatedBalloon();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("side-pleated-balloon-half", () => {
  const { plan, shade } = pleatedBalloon();
  return place(drawSheet("side", plan, shade, { raise: 0.5 }), PAGE);
});

draws("marking-pleated-balloon", () => {
  const { plan, shade } = pleatedBalloon();
  return place(drawSheet("marking", plan, shade), PAGE);
});
