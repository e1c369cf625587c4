import { drawLegend, drawSheet, place } from "../../src/drawing/index.ts";
import { LINE_SHEETS } from "../../src/shade-plan/index.ts";
import { draws } from "./gallery.ts";
import { PAGE, PHONE } from "./papers.ts";
import { loop, loopLeft, motor, spring, wand } from "./windows.ts";

draws("back-spring", () => {
  const { plan, shade } = spring();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("board-spring", () => {
  const { plan, shade } = spring();
  return place(drawSheet("board", plan, shade), PAGE);
});

draws("lock-spring", () => {
  const { plan, shade } = spring();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("back-wand", () => {
  const { plan, shade } = wand();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("board-wand", () => {
  const { plan, shade } = wand();
  return place(drawSheet("board", plan, shade), PAGE);
});

draws("lock-wand", () => {
  const { plan, shade } = wand();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("back-loop", () => {
  const { plan, shade } = loop();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("board-loop", () => {
  const { plan, shade } = loop();
  return place(drawSheet("board", plan, shade), PAGE);
});

draws("lock-loop", () => {
  const { plan, shade } = loop();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("back-motor", () => {
  const { plan, shade } = motor();
  return place(drawSheet("back", plan, shade), PAGE);
});

draws("board-motor", () => {
  const { plan, shade } = motor();
  return place(drawSheet("board", plan, shade), PAGE);
});

draws("lock-motor", () => {
  const { plan, shade } = motor();
  return place(drawSheet("lock", plan, shade), PAGE);
});

draws("front-loop-half", () => {
  const { plan, shade } = loop();
  return place(drawSheet("front", plan, shade, { raise: 0.5 }), PAGE);
});

draws("front-wand", () => {
  const { plan, shade } = wand();
  return place(drawSheet("front", plan, shade), PAGE);
});

draws("back-loop-left", () => {
  const { plan, shade } = loopLeft();
  return place(drawSheet("back", plan, shade, { raise: 1 }), PAGE);
});

draws("side-loop-raised", () => {
  const { plan, shade } = loop();
  return place(drawSheet("side", plan, shade, { raise: 1 }), PAGE);
});

draws("side-spring", () => {
  const { plan, shade } = spring();
  return place(drawSheet("side", plan, shade), PAGE);
});

draws("lock-motor-phone", () => {
  const { plan, shade } = motor();
  return place(drawSheet("lock", plan, shade), PHONE.fit, PHONE.options);
});

draws("legend-tube", () => {
  const { plan, shade } = loop();
  const drawings = LINE_SHEETS.map((kind) => drawSheet(kind, plan, shade));
  return place(drawLegend(drawings), PAGE);
});
