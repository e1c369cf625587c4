import { describe, expect, test } from "vitest";
import { PAINTS, type Paint, THEMES } from "./paints.ts";

/** Relative luminance and contrast ratio as WCAG 2.2 defines them (definitions of “relative luminance”, “contrast ratio”). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const GROUNDS: Paint[] = ["paper", "face", "lining", "wrong", "cloth", "wood", "metal", "wall", "glass"];

describe.each(THEMES)("on %s paper", (theme) => {
  test.each(["ink", "pencil", "stop", "fix", "accent", "unproven"] as const)(
    "%s is read as text (WCAG 2.2, 1.4.3: 4.5 to 1)",
    (paint) => {
      expect(contrast(PAINTS[paint][theme], PAINTS.paper[theme])).toBeGreaterThanOrEqual(4.5);
    },
  );

  test.each(GROUNDS)("ink stands out on %s (4.5 to 1)", (ground) => {
    expect(contrast(PAINTS.ink[theme], PAINTS[ground][theme])).toBeGreaterThanOrEqual(4.5);
  });

  test("chalk is seen as a line (WCAG 2.2, 1.4.11: 3 to 1)", () => {
    expect(contrast(PAINTS.chalk[theme], PAINTS.paper[theme])).toBeGreaterThanOrEqual(3);
  });
});

test("black and white give the 21 to 1 of the definition", () => {
  expect(contrast("#000000", "#FFFFFF")).toBeCloseTo(21, 9);
});

test("cords have the eight colours of Okabe and Ito, Color Universal Design (2008)", () => {
  const published = [
    [0, 0, 0],
    [230, 159, 0],
    [86, 180, 233],
    [0, 158, 115],
    [240, 228, 66],
    [0, 114, 178],
    [213, 94, 0],
    [204, 121, 167],
  ].map((rgb) => `#${rgb.map((part) => part.toString(16).padStart(2, "0")).join("")}`.toUpperCase());
  for (const theme of THEMES) {
    const ours = Object.entries(PAINTS).flatMap(([name, hex]) =>
      name.startsWith("cord-") ? [hex[theme]] : [],
    );
    expect([...ours].sort()).toEqual([...published].sort());
  }
});
