import type { ResolvedMaking, ResolvedShade } from "../../job/index.ts";
import type { ClothMark, Column, Form, Haberdashery, Size, Swag } from "../../shade-plan/index.ts";
import { inches, lengthText } from "../../units/index.ts";

/** Tape beyond each end of the cloth that it gathers, to knot its cords. */
const TAPE_END_MM = inches(1);
const SHOT_BAG_MM = inches(3);
/** Both edges of a frill turned under. */
const FRILL_TURNS_MM = inches(1);

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
  return [{ id: "shot-bags", label: "Bag of shot", count: columns, lengthMm: SHOT_BAG_MM, piece: true }];
}

/** Strips across the cloth that a frill takes: 72 in of frill are two widths of 36 in cloth. */
export function frillWidths(frillMm: number, usableWidthMm: number): number {
  return Math.ceil(frillMm / usableWidthMm - 1e-9);
}

/** The frill's strips, joined end to end: as long as the edge of the flat cloth times its fullness. */
export function frillOf(
  {
    making: { gather },
    cloths,
    units,
  }: Pick<ResolvedShade, "cloths" | "units"> & { making: Pick<ResolvedMaking, "gather"> },
  edgeMm: number,
): Haberdashery[] {
  if (gather.frillMm === 0) return [];
  const count = frillWidths(edgeMm * gather.frillFullness, cloths.face.usableWidthMm);
  const deepMm = gather.frillMm + FRILL_TURNS_MM;
  const label = `Frill, strip across the face cloth, cut ${lengthText(deepMm, units)} deep`;
  return [{ id: "frill", label, count, lengthMm: cloths.face.usableWidthMm, fromFace: true }];
}
