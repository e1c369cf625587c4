import { figureRule, type Worked } from "../../../figures/index.ts";
import type { ResolvedMaking } from "../../../job/index.ts";
import type { ClothMark, Form, Grid, Size, Stretch } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { plainForm, plainStretches } from "../../base/plain-form.ts";
import type { Tucks } from "./tucks.ts";

const TAKE_UP = figureRule({
  id: "shape.tuck-cloth",
  label: "Cloth in the tucks",
  symbol: "X",
  unit: "mm",
  formula: "2·n·d",
  inputs: {
    n: ["count", "tucks", "figure:shape.tucks"],
    d: ["mm", "depth of a tuck", "tuck/depthMm"],
  },
  cite: cite("singer-sewing", "1/2 in for each tuck, face and lining"),
  compute: ({ n, d }) => 2 * n * d,
});

/** Two depths of cloth for every tuck, in all layers: they are sewn through together. */
export function tuckedForm(
  shade: { making: Pick<ResolvedMaking, "board" | "tuck"> },
  size: Size,
  grid: Grid,
  tucks: Tucks,
): Worked<Form> {
  const { count, sewn, depthMm } = tucks;
  const takeUp = TAKE_UP.figure({ n: count, d: depthMm });
  const takeUpMm = takeUp.value;
  const form: Form = {
    ...plainForm(shade, size, grid),
    stretches: stretches(grid, tucks),
    allowances: [
      ...(sewn > 0 ? [{ label: `${sewn} tucks`, widthMm: 0, lengthMm: (takeUpMm * sewn) / count }] : []),
      { label: "the rule’s tuck on the top line, spare", widthMm: 0, lengthMm: takeUpMm / count },
    ].filter(({ lengthMm }) => lengthMm > 0),
    ribs: { rows: [], face: shade.making.tuck.face },
    marks: tuckMarks(tucks),
  };
  return { values: form, workings: [takeUp] };
}

/** A tuck counts to the stretch above its stitching. */
function stretches(grid: Grid, { sewn, spacingMm, depthMm }: Tucks): Stretch[] {
  let fromHemMm = 0;
  return plainStretches(grid).map(({ row, cordMm }) => {
    const below = countUpTo(fromHemMm, spacingMm, sewn);
    fromHemMm += cordMm;
    const sewnMm = 2 * depthMm * (countUpTo(fromHemMm, spacingMm, sewn) - below);
    return { row, cordMm, clothMm: cordMm + sewnMm, sewnMm };
  });
}

/** Tucks whose stitching lies lower than this above the hem. */
function countUpTo(fromHemMm: number, spacingMm: number, sewn: number): number {
  return Math.max(0, Math.min(sewn, Math.ceil(fromHemMm / spacingMm - 1e-6) - 1));
}

/** Fold line of every tuck on the flat cloth, from the hem up: the tucks below have taken up two depths each. */
function tuckMarks({ sewn, spacingMm, depthMm }: Tucks): ClothMark[] {
  return Array.from({ length: sewn }, (_, i) => ({
    kind: "tuck",
    along: "y",
    atMm: (i + 1) * spacingMm + 2 * depthMm * i + depthMm,
    label: `tuck ${i + 1}`,
  }));
}
