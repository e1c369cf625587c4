import { figureRule, type Worked } from "../../figures/index.ts";
import type { ResolvedMaking, ResolvedShade } from "../../job/index.ts";
import type { ClothMark, Column, Form, Haberdashery, Size, Swag } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { inches, lengthText } from "../../units/index.ts";

/** Tape beyond each end of the cloth that it gathers, to knot its cords. */
const TAPE_END_MM = inches(1);
const SHOT_BAG_MM = inches(3);

/** The same cloth in every scallop, from the left. */
export function swagsOf(columns: readonly Column[], arcMm: number, sagMm: number): Swag[] {
  return columns.slice(1).map(({ xMm }, i) => ({ fromMm: columns[i]?.xMm ?? 0, toMm: xMm, arcMm, sagMm }));
}

/** Where each column lies on the flat, hemmed cloth, mm from its left edge: strips at the sides, a scallop's cloth between. */
export function flatColumnsMm(columns: readonly Column[], flatWidthMm: number, drawInMm: number): number[] {
  const first = columns[0]?.xMm ?? 0;
  const spanMm = (columns.at(-1)?.xMm ?? 0) - first;
  const stripMm = Math.min(first + drawInMm / 2, flatWidthMm / 4);
  return columns.map(({ xMm }) =>
    spanMm === 0 ? flatWidthMm / 2 : stripMm + ((xMm - first) / spanMm) * (flatWidthMm - 2 * stripMm),
  );
}

/** Upright lines on the flat cloth. */
export function columnMarks(flatMm: readonly number[], name: string): ClothMark[] {
  return flatMm.map((atMm, i) => ({ kind: "tape", along: "x", atMm, label: `${name} ${i + 1}` }));
}

/** The rod behind the lowest row, where one was asked for. */
export function rodOf(
  { gather, board }: Pick<ResolvedMaking, "gather" | "board">,
  size: Pick<Size, "finishedWidthMm">,
  aboveHemMm: number,
): Pick<Form, "bar"> {
  if (gather.weight !== "rod") return {};
  const inMm = Math.min(board.barShorterMm, size.finishedWidthMm) / 2;
  return { bar: { fromMm: inMm, toMm: size.finishedWidthMm - inMm, aboveHemMm } };
}

/** The tape that gathers, sewn flat along the whole cloth. */
export function tapeOf(id: string, label: string, count: number, clothMm: number): Haberdashery {
  return { id, label, count, lengthMm: clothMm + 2 * TAPE_END_MM };
}

/** What holds the lower edge: a cover for the rod, or bags of shot. */
export function weightOf(
  { making, units }: Pick<ResolvedShade, "units"> & { making: Pick<ResolvedMaking, "gather"> },
  form: Pick<Form, "bar">,
  columns: number,
): Haberdashery[] {
  if (form.bar !== undefined) {
    const lengthMm = form.bar.toMm - form.bar.fromMm + TAPE_END_MM;
    const label = `Cover for the rod, ${lengthText(inches(2), units)} wide`;
    return [{ id: "rod-cover", label, count: 1, lengthMm, fromFace: true }];
  }
  if (making.gather.weight === "none") return [];
  return [
    { id: "shot-bags", label: "Bag of steel shot", count: columns, lengthMm: SHOT_BAG_MM, piece: true },
  ];
}

const FRILL = figureRule({
  id: "shape.frill",
  label: "Frill: cloth end to end, before it is gathered",
  symbol: "Y",
  unit: "mm",
  formula: "f·(e·P + s·L)",
  inputs: {
    f: ["ratio", "cloth, times the edge", "gather/frillFullness", "gather/frillMm"],
    e: ["count", "lower edges that it goes round", "gather/frillEdges"],
    P: ["mm", "lower edge of the flat cloth", "figure:shape.gathered-width"],
    s: ["count", "sides that it goes round", "gather/frillEdges"],
    L: ["mm", "finished length, for each side", "figure:measure.finished-length"],
  },
  cite: cite("geometry", "once round the edges that were asked for, times the fullness"),
  compute: ({ f, e, P, s, L }) => f * (e * P + s * L),
});

const LEAST_FRILL_MM = 1;

/** The frill round the edges that its maker asked for; `edgeMm` is the lower edge of the flat cloth, mm. */
export function frillOf(
  { making: { gather } }: { making: Pick<ResolvedMaking, "gather"> },
  { finishedLengthMm }: Pick<Size, "finishedLengthMm">,
  edgeMm: number,
): Worked<Pick<Form, "frill">> {
  const { frillMm, frillEdges, frillDouble, frillFullness } = gather;
  // Nobody makes a frill that no ruler shows.
  if (frillMm < LEAST_FRILL_MM) return { values: {}, workings: [] };
  const cloth = FRILL.figure({
    f: frillFullness,
    e: frillEdges === "sides" ? 0 : 1,
    P: edgeMm,
    s: frillEdges === "hem" ? 0 : 2,
    L: finishedLengthMm,
  });
  const frill = { depthMm: frillMm, edges: frillEdges, double: frillDouble, clothMm: cloth.value };
  return { values: { frill }, workings: [cloth] };
}
