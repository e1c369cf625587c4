import type { ResolvedMaking } from "../../../job/index.ts";
import type { Form, Grid, Haberdashery, ShapedPanel, Size, Swag } from "../../../shade-plan/index.ts";
import { inches } from "../../../units/index.ts";
import { plainStretches } from "../../base/plain-form.ts";
import { riseMm, scallopOfSag } from "../../base/scallop.ts";
import type { Dip } from "./dip.ts";

type Relax = ResolvedMaking["relax"];

/** A weight of a hand's breadth at each column. */
const WEIGHT_MM = inches(4);

/** Where the columns lie on the flat cloth at the hem, from its left edge: as far from the edges as on the shade. */
function flatColumns(size: Size, { columns }: Grid, extraMm: number): number[] {
  const first = columns[0]?.xMm ?? 0;
  return [first, size.finishedWidthMm + extraMm - first];
}

/** How the cloth is shaped: wider at the hem by what the dip takes, and its lower edge cut to the curve. */
export function relaxedForm(
  { relax, board }: Pick<ResolvedMaking, "relax" | "board">,
  size: Size,
  grid: Grid,
  dip: Dip,
): Form {
  const width = size.finishedWidthMm;
  const [first, last] = grid.columns;
  const fromMm = first?.xMm ?? 0;
  const toMm = last?.xMm ?? width;
  const inMm = Math.min(board.barShorterMm, width) / 2;
  const swags = swagsOf(relax, grid, dip, fromMm, toMm);
  const isBarred = relax.weight === "bar";
  const untilMm = relax.widening === "even" ? {} : { untilMm: size.finishedLengthMm };
  return {
    stretches: plainStretches(grid),
    allowances: dip.extraMm > 0 ? [{ label: "wider at the hem", widthMm: dip.extraMm, lengthMm: 0 }] : [],
    across: "flat",
    pleats: [],
    swags,
    ease: [{ fromMm, toMm, extraMm: dip.extraMm, ...untilMm }],
    ...(isBarred ? { bar: { fromMm: inMm, toMm: width - inMm } } : {}),
    panel: panelOf(relax, size, dip, swags[0]?.sagMm ?? 0, fromMm),
    ribs: { rows: [], face: "back" },
    marks: [],
    joinsAtMm: flatColumns(size, grid, dip.extraMm),
    haberdashery: weights(relax),
  };
}

/** A curved edge dips with the shade down as well, but never so far that it would pass the lowest rings. */
function swagsOf(relax: Relax, grid: Grid, dip: Dip, fromMm: number, toMm: number): Swag[] {
  const isCurved = relax.lowerEdge === "curved" && relax.weight !== "bar";
  const sagMm = Math.min(dip.dipMm, (2 / 3) * grid.bottomSectionMm);
  if (!isCurved || sagMm <= 0) return [];
  // Cut to the dip over a cloth that is already wider than the columns are apart.
  const { arcMm } = scallopOfSag(dip.spanMm + dip.extraMm, sagMm);
  return [{ fromMm, toMm, arcMm, sagMm }];
}

/** Places along each half of the curve at which it is measured. */
const CURVE_SHARES = [0.25, 0.5, 0.75, 1];

function panelOf(relax: Relax, size: Size, dip: Dip, dipMm: number, endsInMm: number): ShapedPanel {
  const spanMm = dip.spanMm + dip.extraMm;
  const { parameterMm: k } = scallopOfSag(spanMm, dipMm);
  const onCurve = (outMm: number) => ({ outMm, upMm: k === undefined ? 0 : riseMm(k, outMm) });
  return {
    hemWidthMm: size.finishedWidthMm + dip.extraMm,
    taperMm: relax.widening === "tapered" ? dip.extraMm / 2 : 0,
    dipMm,
    endsInMm,
    sideLengthMm: size.finishedLengthMm - dipMm,
    curve: dipMm > 0 ? CURVE_SHARES.map((share) => onCurve((share * spanMm) / 2)) : [],
  };
}

function weights(relax: Relax): Haberdashery[] {
  if (relax.weight !== "at-columns") return [];
  return [{ id: "hem-weights", label: "Short steel weight for the hem", count: 2, lengthMm: WEIGHT_MM }];
}
