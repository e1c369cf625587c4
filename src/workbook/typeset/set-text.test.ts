import fc from "fast-check";
import { expect, test } from "vitest";
import { num, onPage } from "./set-text.ts";

test("a number has three decimals at the most, and none that says nothing", () => {
  expect([0, -0, 1, -1, 0.0004, -0.0004, 0.05, -0.125, 12.3456, 999.9996, -1000.5].map(num)).toEqual([
    "0",
    "0",
    "1",
    "-1",
    "0",
    "0",
    "0.05",
    "-0.125",
    "12.346",
    "1000",
    "-1000.5",
  ]);
});

test("it is written as the language writes a number, which reads back as itself (ECMA-262, Number::toString)", () => {
  fc.assert(
    fc.property(fc.double({ min: -20_000, max: 20_000, noNaN: true }), (value) => {
      expect(num(value)).toBe(String(Math.round(value * 1000) / 1000));
      expect(onPage(value)).toBe(String(Math.round(value * 100) / 100));
    }),
    { numRuns: 2000 },
  );
  expect(num(Number.NaN)).toBe("NaN");
});
