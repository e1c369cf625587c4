import { drawSheet, place } from "../../src/drawing/index.ts";
import { battens, hobbled, tucked } from "./fold-style-windows.ts";
import { draws } from "./gallery.ts";
import { austrian, festoon, gatheredBalloon } from "./gathered-windows.ts";
import { type Case, outside, pleatedBalloon, relaxed, tailed } from "./windows.ts";

/** Small: a picture is thousands of faces. */
const PLATE = { maxWidthMm: 80, maxHeightMm: 110 };

const STYLES: Record<string, () => Case> = {
  flat: outside,
  ribbed: battens,
  hobbled,
  tucked,
  relaxed,
  tailed,
  "pleated-balloon": pleatedBalloon,
  "gathered-balloon": gatheredBalloon,
  austrian,
  festoon,
};

for (const [style, make] of Object.entries(STYLES))
  for (const [suffix, raise] of [
    ["", 0],
    ["-half", 0.5],
    ["-raised", 1],
  ] as const)
    draws(`picture-${style}${suffix}`, () => {
      const { plan, shade } = make();
      return place(drawSheet("picture", plan, shade, { raise }), PLATE);
    });
