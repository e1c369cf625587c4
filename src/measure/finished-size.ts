import { type Figure, figureRule, figureRuleOf, type Worked } from "../figures/index.ts";
import { cite } from "../sources/index.ts";
import { downToMark, toMark } from "../units/index.ts";
import { reach, wishMm } from "./beside.ts";
import type { MeasuredShade } from "./measure-reads.ts";

export interface FinishedSize {
  finishedWidthMm: number;
  finishedLengthMm: number;
  /** How far the shade reaches beyond the opening at its left, mm; negative within it. */
  beyondLeftMm?: number;
}

/** A shade is never planned smaller than this: a finding says that nothing sensible is left. */
export const SMALLEST_FINISHED_MM = 50;

const WIDTH = { id: "measure.finished-width", symbol: "W", unit: "mm" } as const;
const LENGTH = { id: "measure.finished-length", symbol: "L", unit: "mm" } as const;
const WIDTHS = ["opening/widthsMm", "shade/mount"] as const;
const HEIGHTS = ["opening/heightsMm", "shade/mount"] as const;

const INSIDE_WIDTH = figureRule({
  ...WIDTH,
  label: "Finished width before rounding down to the ruler",
  formula: "w − a",
  inputs: {
    w: ["mm", "narrowest width of the opening", ...WIDTHS],
    a: ["mm", "deduction, both sides together", "mount/insideWidthOffMm"],
  },
  cite: cite("measuring-guides", "narrowest width; total deduction 6 to 20 mm"),
  compute: ({ w, a }) => w - a,
});

const INSIDE_LENGTH = figureRule({
  ...LENGTH,
  label: "Finished length before rounding down to the ruler",
  formula: "h − b",
  inputs: {
    h: ["mm", "shortest height of the opening", ...HEIGHTS],
    b: ["mm", "deduction at the sill", "mount/insideLengthOffMm"],
  },
  cite: cite(
    "our-choice",
    "guides disagree between shortest and longest; the shortest always clears the sill",
  ),
  compute: ({ h, b }) => h - b,
});

const OUTSIDE_WIDTH = figureRule({
  ...WIDTH,
  label: "Finished width before rounding to the ruler",
  formula: "w + 2·o",
  inputs: {
    w: ["mm", "widest width of the opening", ...WIDTHS],
    o: ["mm", "overlap at each side", "mount/overlapSideMm"],
  },
  cite: cite("measuring-guides", "overlap 38 to 75 mm at each side"),
  compute: ({ w, o }) => w + 2 * o,
});

const OUTSIDE_LENGTH = figureRule({
  ...LENGTH,
  label: "Finished length before rounding to the ruler",
  formula: "h + a + b",
  inputs: {
    h: ["mm", "tallest height of the opening", ...HEIGHTS],
    a: ["mm", "overlap above", "mount/overlapAboveMm"],
    b: ["mm", "overlap below", "mount/overlapBelowMm"],
  },
  cite: cite("measuring-guides", "10 to 15 cm above, to 5 cm below the sill"),
  compute: ({ h, a, b }) => h + a + b,
});

const BETWEEN_NEIGHBOURS = figureRuleOf<{ opening: string }>()({
  ...WIDTH,
  label: "Finished width before rounding down to the ruler",
  formula: "w + l + r",
  inputs: {
    w: ["mm", ({ opening }) => opening, ...WIDTHS],
    l: ["mm", "beyond it at the left; less than nothing within it", "figure:measure.reach-left"],
    r: ["mm", "beyond it at the right", "figure:measure.reach-right"],
  },
  // What a side gets where its neighbour leaves it enough.
  restsOn: ["opening/left", "opening/right", "mount/insideWidthOffMm", "mount/overlapSideMm"],
  cite: cite("geometry", "each side reaches as far as is wished, or as its neighbour leaves"),
  compute: ({ w, l, r }) => w + l + r,
});

/** Opening to finished size for each mount, mm, rounded once at the ruler. */
export function finishedSize(shade: MeasuredShade): Worked<FinishedSize> {
  const { widthsMm, heightsMm } = shade.opening;
  const { mount } = shade.making;
  const { ruler } = shade.units;
  const { sides, workings } = sidesOf(shade);
  const beyondLeft = sides.apart ? { beyondLeftMm: sides.left } : {};

  switch (shade.mount) {
    case "to-size":
      return {
        values: { finishedWidthMm: Math.min(...widthsMm), finishedLengthMm: Math.min(...heightsMm) },
        workings,
      };
    case "inside": {
      const narrowest = Math.min(...widthsMm);
      const width = sides.apart
        ? betweenNeighbours(narrowest, sides, "narrowest width of the opening")
        : INSIDE_WIDTH.figure({ w: narrowest, a: mount.insideWidthOffMm });
      const length = INSIDE_LENGTH.figure({ h: Math.min(...heightsMm), b: mount.insideLengthOffMm });
      return {
        values: {
          finishedWidthMm: Math.max(SMALLEST_FINISHED_MM, downToMark(width.value, ruler)),
          finishedLengthMm: Math.max(SMALLEST_FINISHED_MM, downToMark(length.value, ruler)),
          ...beyondLeft,
        },
        workings: [...workings, width, length],
      };
    }
    case "outside": {
      const widest = Math.max(...widthsMm);
      const width = sides.apart
        ? betweenNeighbours(widest, sides, "widest width of the opening")
        : OUTSIDE_WIDTH.figure({ w: widest, o: mount.overlapSideMm });
      const length = OUTSIDE_LENGTH.figure({
        h: Math.max(...heightsMm),
        a: mount.overlapAboveMm,
        b: mount.overlapBelowMm,
      });
      return {
        values: {
          // Between neighbours there is no room to round up.
          finishedWidthMm: Math.max(
            SMALLEST_FINISHED_MM,
            sides.apart ? downToMark(width.value, ruler) : toMark(width.value, ruler),
          ),
          finishedLengthMm: toMark(length.value, ruler),
          ...beyondLeft,
        },
        workings: [...workings, width, length],
      };
    }
  }
}

interface Sides {
  left: number;
  right: number;
  /** One of them gets less than is wished. */
  apart: boolean;
}

/** What each side gets: its overlap or deduction, or less where a neighbour stands in the way. */
function sidesOf(shade: MeasuredShade): { sides: Sides; workings: Figure[] } {
  const wish = wishMm(shade);
  const reaches = { left: reach(shade, "left"), right: reach(shade, "right") };
  const left = Math.min(wish, reaches.left?.value ?? wish);
  const right = Math.min(wish, reaches.right?.value ?? wish);
  return {
    sides: { left, right, apart: left !== wish || right !== wish },
    workings: [reaches.left, reaches.right].filter((figure) => figure !== undefined),
  };
}

function betweenNeighbours(openingMm: number, { left, right }: Sides, opening: string): Figure {
  return BETWEEN_NEIGHBOURS.figure({ w: openingMm, l: left, r: right }, { opening });
}
