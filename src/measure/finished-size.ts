import type { WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import { downToMark, toMark } from "../units/index.ts";
import { reachMm, wishMm } from "./beside.ts";

export interface FinishedSize {
  finishedWidthMm: number;
  finishedLengthMm: number;
  /** How far the shade reaches beyond the opening at its left, mm; negative within it. */
  beyondLeftMm?: number;
}

/** A shade is never planned smaller than this: a finding says that nothing sensible is left. */
export const SMALLEST_FINISHED_MM = 50;

/** Opening to finished size for each mount, rounded once at the ruler. */
export function finishedSize(resolved: ResolvedShade, book: WorkingBook): FinishedSize {
  const { widthsMm, heightsMm } = resolved.opening;
  const narrowest = Math.min(...widthsMm);
  const widest = Math.max(...widthsMm);
  const shortest = Math.min(...heightsMm);
  const tallest = Math.max(...heightsMm);
  const { mount } = resolved.making;
  const { ruler } = resolved.units;
  const sides = sidesOf(resolved, book);

  switch (resolved.mount) {
    case "to-size":
      return { finishedWidthMm: narrowest, finishedLengthMm: shortest };
    case "inside": {
      const width = sides.apart
        ? betweenNeighbours(narrowest, sides, "narrowest width of the opening", book)
        : book.figure("measure.finished-width", {
            label: "Finished width before rounding down to the ruler",
            symbol: "W",
            unit: "mm",
            formula: "w − a",
            given: {
              w: [narrowest, "mm", "narrowest width of the opening"],
              a: [mount.insideWidthOffMm, "mm", "deduction, both sides together"],
            },
            cite: cite("measuring-guides", "narrowest width; total deduction 6 to 20 mm"),
            compute: ({ w, a }) => w - a,
          });
      const length = book.figure("measure.finished-length", {
        label: "Finished length before rounding down to the ruler",
        symbol: "L",
        unit: "mm",
        formula: "h − b",
        given: {
          h: [shortest, "mm", "shortest height of the opening"],
          b: [mount.insideLengthOffMm, "mm", "deduction at the sill"],
        },
        cite: cite(
          "our-choice",
          "guides disagree between shortest and longest; the shortest always clears the sill",
        ),
        compute: ({ h, b }) => h - b,
      });
      return {
        finishedWidthMm: Math.max(SMALLEST_FINISHED_MM, downToMark(width, ruler)),
        finishedLengthMm: Math.max(SMALLEST_FINISHED_MM, downToMark(length, ruler)),
        ...(sides.apart ? { beyondLeftMm: sides.left } : {}),
      };
    }
    case "outside": {
      const width = sides.apart
        ? betweenNeighbours(widest, sides, "widest width of the opening", book)
        : book.figure("measure.finished-width", {
            label: "Finished width before rounding to the ruler",
            symbol: "W",
            unit: "mm",
            formula: "w + 2·o",
            given: {
              w: [widest, "mm", "widest width of the opening"],
              o: [mount.overlapSideMm, "mm", "overlap at each side"],
            },
            cite: cite("measuring-guides", "overlap 38 to 75 mm at each side"),
            compute: ({ w, o }) => w + 2 * o,
          });
      const length = book.figure("measure.finished-length", {
        label: "Finished length before rounding to the ruler",
        symbol: "L",
        unit: "mm",
        formula: "h + a + b",
        given: {
          h: [tallest, "mm", "tallest height of the opening"],
          a: [mount.overlapAboveMm, "mm", "overlap above"],
          b: [mount.overlapBelowMm, "mm", "overlap below"],
        },
        cite: cite("measuring-guides", "10 to 15 cm above, to 5 cm below the sill"),
        compute: ({ h, a, b }) => h + a + b,
      });
      return {
        // Between neighbours there is no room to round up.
        finishedWidthMm: Math.max(
          SMALLEST_FINISHED_MM,
          sides.apart ? downToMark(width, ruler) : toMark(width, ruler),
        ),
        finishedLengthMm: toMark(length, ruler),
        ...(sides.apart ? { beyondLeftMm: sides.left } : {}),
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
function sidesOf(resolved: ResolvedShade, book: WorkingBook): Sides {
  const wish = wishMm(resolved);
  const left = Math.min(wish, reachMm(resolved, "left", book) ?? wish);
  const right = Math.min(wish, reachMm(resolved, "right", book) ?? wish);
  return { left, right, apart: left !== wish || right !== wish };
}

function betweenNeighbours(
  openingMm: number,
  { left, right }: Sides,
  label: string,
  book: WorkingBook,
): number {
  return book.figure("measure.finished-width", {
    label: "Finished width before rounding down to the ruler",
    symbol: "W",
    unit: "mm",
    formula: "w + l + r",
    given: {
      w: [openingMm, "mm", label],
      l: [left, "mm", "beyond it at the left; less than nothing within it"],
      r: [right, "mm", "beyond it at the right"],
    },
    cite: cite("geometry", "each side reaches as far as is wished, or as its neighbour leaves"),
    compute: ({ w, l, r }) => w + l + r,
  });
}
