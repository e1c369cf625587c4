import { figureRule, type Worked } from "../../../figures/index.ts";
import {
  boardAllowanceMm,
  type ResolvedMaking,
  type ResolvedShade,
  usualLengthFullness,
} from "../../../job/index.ts";
import type { ClothMark, Form, Grid, Size, Stretch } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { counted } from "../../../words/index.ts";
import { plainStretches } from "../../base/plain-form.ts";
import type { Scallop } from "../../base/scallop.ts";
import { FINISHED_LENGTH, FINISHED_WIDTH } from "../../base/size-inputs.ts";
import {
  columnMarks,
  flatColumnsMm,
  frillOf,
  rodOf,
  swagsOf,
  tapeOf,
  weightOf,
} from "../../gathering/gathered-form.ts";
import type { GatheredShade } from "../../gathering/judge-gathers.ts";

/** What a scallop of an Austrian shade hangs by. */
export const SCALLOP_BY = [
  "gather/sagMm",
  "gather/scallopExtraMm",
  "figure:shape.column-spacing",
  "figure:measure.finished-length",
] as const;

/** Cloth on the length: as the maker wants it, else three times for a sheer and twice for any other. */
export function lengthFullness({
  making,
  cloths,
}: Pick<ResolvedShade, "cloths"> & { making: Pick<ResolvedMaking, "gather"> }): number {
  return making.gather.lengthFullness ?? usualLengthFullness(cloths.face);
}

const LENGTH = figureRule({
  id: "shape.flat-length",
  label: "Cloth along the length, before shirring",
  symbol: "S",
  unit: "mm",
  formula: "L·f",
  inputs: {
    L: FINISHED_LENGTH,
    f: ["ratio", "cloth on tape", "gather/lengthFullness", "shade/face"],
  },
  cite: cite("austrian-2008", "3 times for a sheer, twice for an opaque cloth"),
  compute: ({ L, f }) => L * f,
});

const WIDTH = figureRule({
  id: "shape.gathered-width",
  label: "Cloth across, hemmed",
  symbol: "P",
  unit: "mm",
  formula: "W + x·n + i",
  inputs: {
    W: FINISHED_WIDTH,
    x: ["mm", "cloth of a scallop beyond its width", ...SCALLOP_BY],
    n: ["count", "scallops", "columns/count", "figure:shape.columns"],
    i: ["mm", "for sides that draw in", "gather/drawInMm"],
  },
  cite: cite("austrian-2008", "width + 3 to 4 in for each scallop, before hems"),
  compute: ({ W, x, n, i }) => W + x * n + i,
});

const TAPE = figureRule({
  id: "shape.tape",
  label: "Tape, shirred: top line to its lower end",
  symbol: "t",
  unit: "mm",
  formula: "L − D",
  inputs: {
    L: ["mm", "finished length, to the lowest point", "figure:measure.finished-length"],
    D: ["mm", "a scallop hangs by", "figure:shape.sag", "figure:measure.finished-length"],
  },
  cite: cite("austrian-2008", "the bottom loop hangs about 3 in below the corner of its scallop"),
  compute: ({ L, D }) => L - D,
});

/** How the Austrian shade shapes its cloth: shirred onto tapes along its whole length, a little wider in each scallop. */
export function austrianForm(shade: GatheredShade, size: Size, grid: Grid, scallop: Scallop): Worked<Form> {
  const { columns } = grid;
  const { drawInMm } = shade.making.gather;
  const scallops = columns.length - 1;
  const fullness = lengthFullness(shade);
  const length = LENGTH.figure({ L: size.finishedLengthMm, f: fullness });
  const width = WIDTH.figure({
    W: size.finishedWidthMm,
    x: scallop.arcMm - scallop.spanMm,
    n: scallops,
    i: drawInMm,
  });
  const tape = TAPE.figure({ L: size.finishedLengthMm, D: grid.bottomSectionMm });
  const [clothMm, widthMm, tapeMm] = [length.value, width.value, tape.value];
  const bar = rodOf(shade.making, size, grid.bottomSectionMm);
  const flat = flatColumnsMm(columns, widthMm, drawInMm);
  const stretches = shirred(grid, clothMm, tapeMm);
  const frilled = frillOf(shade, size, widthMm);
  const form: Form = {
    stretches,
    allowances: [
      {
        label: counted(scallops, "scallop"),
        widthMm: scallops * (scallop.arcMm - scallop.spanMm),
        lengthMm: 0,
      },
      ...(drawInMm > 0 ? [{ label: "sides that draw in", widthMm: drawInMm, lengthMm: 0 }] : []),
      { label: "shirring", widthMm: 0, lengthMm: size.finishedLengthMm * (fullness - 1) },
    ],
    across: "gathered",
    pleats: [],
    swags: swagsOf(columns, scallop.arcMm, scallop.sagMm),
    ...bar,
    ribs: { rows: [], face: "back" },
    marks: [...columnMarks(flat, "tape"), ...rowMarks(grid, stretches)],
    joinsAtMm: flat.slice(1, -1),
    ...frilled.values,
    haberdashery: [
      // It is sewn on over the heading too, up to the raw edge on the board.
      tapeOf(
        "shirring-tape",
        "Shirring tape, sewn flat and drawn up",
        columns.length,
        clothMm + boardAllowanceMm(shade),
      ),
      ...weightOf(shade, bar, columns.length),
    ],
  };
  return { values: form, workings: [length, width, tape, ...frilled.workings] };
}

/** Below the lowest ring hangs the loop of the scallop; what is left is shirred evenly onto the tape. */
function shirred(grid: Grid, clothMm: number, tapeMm: number): Stretch[] {
  const loopMm = grid.bottomSectionMm;
  const onTape = Math.max(1, tapeMm > 0 ? (clothMm - loopMm) / tapeMm : 1);
  return plainStretches(grid).map((one) => (one.row === 0 ? one : { ...one, clothMm: one.cordMm * onTape }));
}

/** Where each row of rings lies on the flat cloth: matched with its place on the tape, the gathers spread evenly. */
function rowMarks(grid: Grid, stretches: readonly Stretch[]): ClothMark[] {
  let atMm = 0;
  return grid.rows.map(({ number }, i) => {
    atMm += stretches[i]?.clothMm ?? 0;
    return { kind: "row", along: "y", atMm, label: `row ${number}` };
  });
}
