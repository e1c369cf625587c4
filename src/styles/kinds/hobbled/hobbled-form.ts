import { figureRule, type Worked } from "../../../figures/index.ts";
import type { ResolvedMaking } from "../../../job/index.ts";
import type { ClothMark, Form, Grid, Haberdashery, Size } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { inches, type UnitChoice, upToMark } from "../../../units/index.ts";
import { plainForm, plainStretches } from "../../base/plain-form.ts";
import { FINISHED_LENGTH } from "../../base/size-inputs.ts";
import type { HobbledSpacing } from "./spacing.ts";

/** Tape is cut longer than the shade, for its two ends. */
const TAPE_OVER_MM = inches(3);

const MORE = figureRule({
  id: "shape.hobble-more",
  label: "Cloth beyond the finished length",
  symbol: "X",
  unit: "mm",
  formula: "q·c − L",
  inputs: {
    q: ["count", "spacings", "figure:shape.hobble-spacings"],
    c: ["mm", "cloth between two marks", "figure:shape.hobble-cloth"],
    L: FINISHED_LENGTH,
  },
  cite: cite("singer-sewing", "face and lining by the fullness longer than the shade"),
  compute: ({ q, c, L }) => q * c - L,
});

const TAPE_LENGTH = figureRule({
  id: "shape.hobble-tape-length",
  label: "Length of one tape",
  symbol: "H",
  unit: "mm",
  formula: "L + o",
  inputs: {
    L: FINISHED_LENGTH,
    o: ["mm", "for its two ends"],
  },
  cite: cite("singer-sewing", "tape = L + 3 in"),
  compute: ({ L, o }) => L + o,
});

/** Cloth longer than the tapes by the same share in every stretch, in all layers: they hang together. */
export function hobbledForm(
  shade: { units: UnitChoice; making: Pick<ResolvedMaking, "board"> },
  size: Size,
  grid: Grid,
  { spacings, tapeMm, clothMm }: HobbledSpacing,
): Worked<Form> {
  const fullness = clothMm / tapeMm;
  const L = size.finishedLengthMm;
  const more = MORE.figure({ q: spacings, c: clothMm, L });
  const tapeLength = TAPE_LENGTH.figure({ L, o: TAPE_OVER_MM });
  const tape: Haberdashery = {
    id: "hobble-tape",
    label: "Twill tape for the folds",
    count: grid.columns.length,
    lengthMm: upToMark(tapeLength.value, shade.units.ruler),
  };
  const form: Form = {
    ...plainForm(shade, size, grid),
    stretches: plainStretches(grid).map(({ row, cordMm }) => ({ row, cordMm, clothMm: cordMm * fullness })),
    allowances: [{ label: "soft folds", widthMm: 0, lengthMm: Math.max(0, more.value) }],
    marks: tapeMarks(spacings, clothMm),
    haberdashery: [tape],
  };
  return { values: form, workings: [more, tapeLength] };
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
