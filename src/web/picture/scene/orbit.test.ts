import { expect, test } from "vitest";
import { BACK, between, FRONT, turned, turnedByKey } from "./orbit.ts";

test("round and round stays within half a turn to either side; above and near have their ends", () => {
  expect(turned(FRONT, { aroundRad: 2 * Math.PI }).aroundRad).toBeCloseTo(FRONT.aroundRad, 12);
  expect(Math.abs(turned(BACK, { aroundRad: 1 }).aroundRad)).toBeLessThanOrEqual(Math.PI);
  expect(turned(FRONT, { aboveRad: 9 }).aboveRad).toBeLessThan(Math.PI / 2);
  expect(turned(FRONT, { near: 1000 }).near).toBe(turned(FRONT, { near: 2000 }).near);
});

test("keys turn by as much each way, and Home and End go to front and back", () => {
  const there = turnedByKey(FRONT, "ArrowRight");
  expect(there && turnedByKey(there, "ArrowLeft")?.aroundRad).toBeCloseTo(FRONT.aroundRad, 12);
  expect(turnedByKey(FRONT, "End")).toBe(BACK);
  expect(turnedByKey(BACK, "Home")).toBe(FRONT);
  expect(turnedByKey(FRONT, "q")).toBeUndefined();
});

test("from one view to another the short way round", () => {
  const from = { aroundRad: 3, aboveRad: 0, near: 1 };
  const to = { aroundRad: -3, aboveRad: 0.5, near: 2 };
  expect(between(from, to, 0)).toEqual(from);
  expect(between(from, to, 0.5).aroundRad).toBeCloseTo(Math.PI, 6);
  expect(between(from, to, 1).near).toBe(2);
});
