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

// No source: what we could tell apart on a grey print at arm's length.
const OTHER_COUNT = 1.4;
const OTHER_SHARE = 0.3;

test("printed grey, rhythms differ by how many marks they have on a length, or by how much of it is lit", () => {
  const rhythms = looks.slice(0, 5).map(({ core: { dashMm = [1, 0] }, rhythmName }) => {
    const period = dashMm.reduce((sum, mm) => sum + mm, 0);
    const lit = dashMm.reduce((sum, mm, i) => (i % 2 === 0 ? sum + mm : sum), 0) / period;
    return { rhythmName, marksPerMm: lit === 1 ? 0 : dashMm.length / 2 / period, lit };
  });
  for (const [i, one] of rhythms.entries()) {
    for (const other of rhythms.slice(i + 1)) {
      const [few, many] = [one.marksPerMm, other.marksPerMm].sort((a, b) => a - b) as [number, number];
      const told = many > OTHER_COUNT * few || Math.abs(one.lit - other.lit) > OTHER_SHARE;
      expect(told, `${one.rhythmName}, ${other.rhythmName}`).toBe(true);
    }
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
