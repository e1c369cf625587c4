import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { PAINTS } from "../../drawing/index.ts";

const css = readFileSync(new URL("./tokens.css", import.meta.url), "utf8");

it.each(Object.entries(PAINTS))("the screen's %s is the drawings' own", (name, { light, dark }) => {
  expect(css).toContain(`--sw-${name}: light-dark(${light.toLowerCase()}, ${dark.toLowerCase()});`);
});

/** Relative luminance: WCAG 2.2, definition of “relative luminance”. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

// WCAG 2.2, 1.4.3 Contrast (Minimum): 4.5 : 1.
it.each(["ink", "pencil", "stop", "fix", "accent", "unproven"] as const)(
  "%s is read on either paper",
  (name) => {
    for (const theme of ["light", "dark"] as const) {
      const [word, paper] = [luminance(PAINTS[name][theme]), luminance(PAINTS.paper[theme])];
      const contrast = (Math.max(word, paper) + 0.05) / (Math.min(word, paper) + 0.05);
      expect(contrast, theme).toBeGreaterThanOrEqual(4.5);
    }
  },
);
