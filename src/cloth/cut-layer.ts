import type { WorkingBook } from "../figures/index.ts";
import { type Cloth, colourOf, type ResolvedShade, USUAL_KIND } from "../job/index.ts";
import type { Layer, LayerCut, Size } from "../shade-plan/index.ts";
import { FIT_SLACK, MM_PER_YARD } from "../units/index.ts";
import { chooseTurn, type TurnStory } from "./choose-turn.ts";
import type { ClothInput } from "./cloth-input.ts";
import type { LayerShape } from "./layer-shape.ts";
import { type Allowance, sumOf } from "./make-up.ts";
import { offTheBoltMm } from "./off-the-bolt.ts";
import { writeCut, writeLength, writeRepeat, writeStart } from "./write-layer.ts";

/** Step in which cloth is sold where the cloth does not say: an eighth of a yard, or 10 cm. */
export function soldByMm(cloth: Cloth, resolved: ResolvedShade): number {
  return cloth.soldByMm ?? (resolved.units.system === "imperial" ? MM_PER_YARD / 8 : 100);
}

/** A layer as cut, before what is bought of its cloth is known. */
export type BareCut = Omit<LayerCut, "buyMm">;

/** A layer as cut, with what was weighed on the way: for the findings. */
export interface CutStory {
  cut: BareCut;
  cloth: Cloth;
  shape: LayerShape;
  turn: TurnStory;
}

/** Cut size, panels, place on the bolt and length off it for one layer. */
export function cutLayer(input: ClothInput, layer: Layer, cloth: Cloth, book: WorkingBook): CutStory {
  const { resolved, size } = input;
  const { shape, story } = chooseTurn(input, layer, cloth);
  const { repeat } = cloth;
  const cutWidthMm = writeCut(book, layer, "width", size.finishedWidthMm, shape, cloth);
  const cutLengthMm = writeCut(book, layer, "length", size.finishedLengthMm, shape, cloth);
  const off = offTheBoltMm(resolved, cloth, shape);
  const repeatLengthMm =
    repeat === undefined
      ? off.pitchMm
      : writeRepeat(book, layer, shape.turned ? cutWidthMm : cutLengthMm, repeat.verticalMm);
  if (repeat !== undefined) writeStart(book, layer, shape, repeat.verticalMm);
  const lengthMm = writeLength(book, layer, shape, off, resolved.making.pattern.halfDropRule);
  const cut: BareCut = {
    layer,
    clothId: cloth.id,
    clothName: cloth.name,
    colour: colourOf(cloth, USUAL_KIND[layer]),
    cutWidthMm,
    cutLengthMm,
    repeatLengthMm,
    usableWidthMm: cloth.usableWidthMm,
    widths: shape.drops,
    panels: shape.panels,
    lays: shape.lays,
    lengthMm,
    makeUp: [
      { label: "finished", widthMm: size.finishedWidthMm, lengthMm: size.finishedLengthMm },
      ...shape.added.map(({ label, widthMm, lengthMm: longer }) => ({ label, widthMm, lengthMm: longer })),
      ...shrinkage(size, shape.added, cutWidthMm, cutLengthMm),
    ],
    edges: shape.edges,
    turned: shape.turned,
    joinsAt: shape.joins.at,
    seamsMm: shape.seamsMm,
    startWasteMm: shape.startWasteMm,
    ...(shape.motif === undefined ? {} : { motif: shape.motif }),
    ...(repeat === undefined ? {} : { repeatMm: repeat.verticalMm, match: repeat.match }),
  };
  return { cut, cloth, shape, turn: story };
}

function shrinkage(
  size: Size,
  added: readonly Allowance[],
  cutWidthMm: number,
  cutLengthMm: number,
): LayerCut["makeUp"] {
  const widthMm = Math.max(0, cutWidthMm - size.finishedWidthMm - sumOf(added, "widthMm"));
  const lengthMm = Math.max(0, cutLengthMm - size.finishedLengthMm - sumOf(added, "lengthMm"));
  return Math.max(widthMm, lengthMm) > FIT_SLACK ? [{ label: "shrinkage", widthMm, lengthMm }] : [];
}
