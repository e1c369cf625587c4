import { createRequire } from "node:module";
import { type Font, openSync } from "fontkit";
import type { PlacedText } from "../../src/drawing/index.ts";

const files = createRequire(import.meta.url);
const open = (path: string): Font => {
  const font = openSync(files.resolve(`@expo-google-fonts/source-sans-3/${path}`));
  if (!("layout" in font)) throw new Error(`invalid font: ${path}`);
  return font;
};
const REGULAR = open("400Regular/SourceSans3_400Regular.ttf");
const STRONG = open("600SemiBold/SourceSans3_600SemiBold.ttf");

/** Width of a line as the font file itself sets it, in ems. */
export function realWidthEm(text: string, strong: boolean): number {
  const font = strong ? STRONG : REGULAR;
  return font.layout(text).advanceWidth / font.unitsPerEm;
}

/** Corners of the letters on paper: cap height above the baseline, a fifth of the em below. */
export function realCorners(text: PlacedText): (readonly [number, number])[] {
  const width = realWidthEm(text.text, text.strong) * text.sizeMm;
  const before = { start: 0, middle: width / 2, end: width }[text.anchor];
  const turn = (text.angleDeg * Math.PI) / 180;
  const corner = (x: number, y: number) =>
    [
      text.at[0] + x * Math.cos(turn) - y * Math.sin(turn),
      text.at[1] + x * Math.sin(turn) + y * Math.cos(turn),
    ] as const;
  const up = -0.66 * text.sizeMm;
  const down = 0.2 * text.sizeMm;
  return [
    corner(-before, up),
    corner(width - before, up),
    corner(width - before, down),
    corner(-before, down),
  ];
}

/** Two convex shapes apart or not: the separating axis theorem. */
export function touch(a: (readonly [number, number])[], b: (readonly [number, number])[]): boolean {
  for (const shape of [a, b]) {
    for (let i = 0; i < shape.length; i += 1) {
      const p = shape[i];
      const q = shape[(i + 1) % shape.length];
      if (p === undefined || q === undefined) continue;
      const axis = [q[1] - p[1], p[0] - q[0]] as const;
      const along = (points: (readonly [number, number])[]) =>
        points.map(([x, y]) => x * axis[0] + y * axis[1]);
      if (Math.max(...along(a)) <= Math.min(...along(b)) || Math.max(...along(b)) <= Math.min(...along(a)))
        return false;
    }
  }
  return true;
}
