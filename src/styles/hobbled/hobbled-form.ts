import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { ClothMark, Form, Grid, Haberdashery, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { inches, upToMark } from "../../units/index.ts";
import { plainForm, plainStretches } from "../flat/flat-form.ts";
import type { HobbledSpacing } from "./spacing.ts";

/** Tape is cut longer than the shade, for its two ends. */
const TAPE_OVER_MM = inches(3);

/** Cloth longer than the tapes by the same share in every stretch, in all layers: they hang together. */
export function hobbledForm(
  resolved: ResolvedShade,
  size: Size,
  grid: Grid,
  { spacings, tapeMm, clothMm }: HobbledSpacing,
  book: WorkingBook,
): Form {
  const fullness = clothMm / tapeMm;
  const moreMm = book.figure("shape.hobble-more", {
    label: "Cloth beyond the finished length",
    symbol: "X",
    unit: "mm",
    formula: "q·c − L",
    given: {
      q: [spacings, "count", "spacings"],
      c: [clothMm, "mm", "cloth between two marks"],
      L: [size.finishedLengthMm, "mm", "finished length"],
    },
    cite: cite("singer-sewing", "face and lining by the fullness longer than the shade"),
    compute: ({ q, c, L }) => q * c - L,
  });
  return {
    ...plainForm(resolved, size, grid),
    stretches: plainStretches(grid).map(({ row, cordMm }) => ({ row, cordMm, clothMm: cordMm * fullness })),
    allowances: [{ label: "soft folds", widthMm: 0, lengthMm: Math.max(0, moreMm) }],
    marks: tapeMarks(spacings, clothMm),
    haberdashery: [tape(resolved, size, grid, book)],
  };
}

/** Where the tape's marks meet the cloth: from the hem up on the flat cloth. The last is the top line. */
function tapeMarks(spacings: number, clothMm: number): ClothMark[] {
  return Array.from({ length: spacings - 1 }, (_, i) => ({
    kind: "tape",
    along: "y",
    atMm: (i + 1) * clothMm,
    label: `mark ${i + 1}`,
  }));
}

function tape(resolved: ResolvedShade, size: Size, grid: Grid, book: WorkingBook): Haberdashery {
  const lengthMm = book.figure("shape.hobble-tape-length", {
    label: "Length of one tape",
    symbol: "H",
    unit: "mm",
    formula: "L + o",
    given: {
      L: [size.finishedLengthMm, "mm", "finished length"],
      o: [TAPE_OVER_MM, "mm", "for its two ends"],
    },
    cite: cite("singer-sewing", "tape = L + 3 in"),
    compute: ({ L, o }) => L + o,
  });
  return {
    id: "hobble-tape",
    label: "Twill tape for the folds",
    count: grid.columns.length,
    lengthMm: upToMark(lengthMm, resolved.units.ruler),
  };
}
