import { figureRule, type Worked } from "../../figures/index.ts";
import type { ClothMark, Form, Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { plainStretches } from "../base/plain-form.ts";
import { columnMarks, flatColumnsMm, frillOf, rodOf, swagsOf, tapeOf, weightOf } from "./gathered-form.ts";
import type { GatheredShade } from "./judge-gathers.ts";

/** Scallops at a gathered hem, mm: the cloth across the whole shade and across one of them, and how they hang. */
export interface HemScallops {
  flatWidthMm: number;
  arcMm: number;
  /** Shade lowered. */
  sagMm: number;
  hemRowMm: number;
}

const FLAT_LENGTH = figureRule({
  id: "shape.flat-length",
  label: "Cloth along the length, before it is drawn up",
  symbol: "S",
  unit: "mm",
  formula: "L + x",
  inputs: {
    L: ["mm", "finished length, to the lowest point", "figure:measure.finished-length"],
    x: ["mm", "cloth that stays drawn up at the hem", "gather/hemExtraMm"],
  },
  cite: cite("austrian-uk", "length + 50 cm; a pouf that stays takes 10 to 15 in (from memory)"),
  compute: ({ L, x }) => L + x,
});

/** Cloth that is gathered at the head and drawn up at the columns of the hem. */
export function gatheredHemForm(
  shade: GatheredShade,
  size: Size,
  grid: Grid,
  { flatWidthMm, arcMm, sagMm, hemRowMm }: HemScallops,
): Worked<Form> {
  const { columns } = grid;
  const { widthFullness, hemExtraMm, drawInMm } = shade.making.gather;
  const flatLength = FLAT_LENGTH.figure({ L: size.finishedLengthMm, x: hemExtraMm });
  const drawnUpMm = hemExtraMm + sagMm;
  const flat = flatColumnsMm(columns, flatWidthMm, drawInMm);
  const bar = rodOf(shade.making, size, grid.bottomSectionMm);
  const tied = tiedRings(drawnUpMm, shade.making.fold.largestSpacingMm);
  const frilled = frillOf(shade, size, flatWidthMm);
  const form: Form = {
    stretches: plainStretches(grid).map((one) =>
      one.row === 0 ? { ...one, clothMm: one.clothMm + hemExtraMm } : one,
    ),
    allowances: [
      { label: "gathers across", widthMm: size.finishedWidthMm * (widthFullness - 1), lengthMm: 0 },
      ...(drawInMm > 0 ? [{ label: "sides that draw in", widthMm: drawInMm, lengthMm: 0 }] : []),
      ...(hemExtraMm > 0 ? [{ label: "cloth drawn up at the hem", widthMm: 0, lengthMm: hemExtraMm }] : []),
    ],
    across: "gathered",
    pleats: [],
    swags: swagsOf(columns, arcMm, sagMm),
    ...bar,
    ribs: { rows: [], face: "back" },
    marks: [...rowMarks(grid, hemRowMm, drawnUpMm, tied), ...columnMarks(flat, "column")],
    ...(tied > 1 ? { tiedRings: tied - 1 } : {}),
    joinsAtMm: flat.slice(1, -1),
    ...frilled.values,
    haberdashery: [
      tapeOf("gathering-tape", "Gathering tape along the head", 1, flatWidthMm),
      ...weightOf(shade, bar, columns.length),
    ],
  };
  return { values: form, workings: [flatLength, ...frilled.workings] };
}

/** Rings of a column that are tied together: no two farther apart on the cloth than the largest spacing of rows. */
export function tiedRings(drawnUpMm: number, largestSpacingMm: number): number {
  return drawnUpMm <= 0 ? 1 : Math.ceil(drawnUpMm / largestSpacingMm - 1e-9) + 1;
}

/** On the flat cloth, from the hem up: the rings that are tied to the lowest one, then the rows above them. */
function rowMarks(grid: Grid, hemRowMm: number, drawnUpMm: number, tied: number): ClothMark[] {
  const first = grid.rows[0]?.fromHemMm ?? 0;
  const bundle = Array.from({ length: tied - 1 }, (_, i): ClothMark => {
    const atMm = hemRowMm + (drawnUpMm * i) / (tied - 1);
    return { kind: "row", along: "y", atMm, label: `tied ring ${i + 1}` };
  });
  return [
    ...bundle,
    ...grid.rows.map(({ number, fromHemMm }): ClothMark => {
      const atMm = hemRowMm + drawnUpMm + fromHemMm - first;
      return { kind: "row", along: "y", atMm, label: `row ${number}` };
    }),
  ];
}
