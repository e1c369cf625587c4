import { expect, test } from "vitest";
import { drawSheet, type PlacedText, place } from "../../src/drawing/index.ts";
import { STYLES } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { realCorners, touch } from "./real-letters.ts";

/** What hangs, and the word beside it. */
const HANGS = { "tube-loop": "tensioner", "tube-wand": "wand" } as const;
type Kind = keyof typeof HANGS;
const KINDS = Object.keys(HANGS) as Kind[];

const SIZES = [
  [900, 1500],
  [700, 1900],
] as const;
const PAPERS = [
  [60, 90],
  [88, 150],
  [180, 130],
] as const;
const CASES = STYLES.flatMap((style) => KINDS.map((kind) => [style, kind] as const));

test.each(CASES)("%s, %s: the name of what hangs lies on no measure", (style, kind) => {
  let seen = 0;
  for (const [widthMm, heightMm] of SIZES) {
    const opening = { widthsMm: [widthMm], heightsMm: [heightMm] };
    const planned = plan(jobWith({ opening, shade: { style, making: { lift: { kind } } } }));
    const [shade] = planned.shades;
    if (shade === undefined) throw new Error("no shade");
    for (const sheet of ["back", "front"] as const) {
      const drawing = drawSheet(sheet, planned, shade, { raise: 0 });
      for (const [maxWidthMm, maxHeightMm] of PAPERS) {
        const { items } = place(drawing, { maxWidthMm, maxHeightMm });
        const texts = items.filter((item): item is PlacedText => item.kind === "text");
        const named = texts.find(({ text }) => text === HANGS[kind]);
        // Where there is no room beside it, it is left out.
        if (named === undefined) continue;
        seen += 1;
        const corners = realCorners(named);
        const under = texts.filter((other) => other !== named && touch(corners, realCorners(other)));
        expect(under.map(({ text }) => text)).toEqual([]);
      }
    }
  }
  expect(seen).toBeGreaterThan(0);
});
