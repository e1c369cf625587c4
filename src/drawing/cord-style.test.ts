import { expect, test } from "vitest";
import { cordStyle } from "./cord-style.ts";

const looks = Array.from({ length: 40 }, (_, i) => cordStyle(i + 1));

test("forty cords differ from each other by colour or rhythm", () => {
  const seen = new Set(looks.map((style) => `${style.paint} ${style.core.dashMm?.join(" ") ?? "plain"}`));
  expect(seen.size).toBe(40);
});

test("neighbours differ in colour and in the name of their rhythm", () => {
  for (let i = 1; i < looks.length; i += 1) {
    expect(looks[i]?.paint).not.toBe(looks[i - 1]?.paint);
    expect(looks[i]?.rhythmName).not.toBe(looks[i - 1]?.rhythmName);
  }
});

test("every cord has a line that shows on paper: ink under its colour, and wider", () => {
  for (const style of looks) {
    expect(style.casing.paint).toBe("ink");
    expect(style.casing.widthMm).toBeGreaterThan(style.core.widthMm);
    expect(style.core.paint).not.toBe("ink");
  }
});

test("a cord keeps its look and says its number", () => {
  expect(cordStyle(9)).toEqual(cordStyle(9));
  expect(cordStyle(12).label).toBe("12");
});
