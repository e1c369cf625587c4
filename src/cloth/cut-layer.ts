import type { Figure, Worked } from "../figures/index.ts";
import { type Cloth, colourOf, USUAL_KIND } from "../job/index.ts";
import type { Layer, LayerCut, Size } from "../shade-plan/index.ts";
import { FIT_SLACK, MM_PER_YARD } from "../units/index.ts";
import { chooseTurn, type TurnStory } from "./choose-turn.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import { BOLT_LENGTH, CUT_LENGTH, CUT_WIDTH, REPEAT_LENGTH, START } from "./layer-figures.ts";
import { type LayerShape, shrinkOf, slantShare } from "./layer-shape.ts";
import { type Allowance, sumOf } from "./make-up.ts";
import { offTheBoltMm } from "./off-the-bolt.ts";
import { repeatSwatch } from "./repeat-swatch.ts";

/** Step in which cloth is sold where the cloth does not say: an eighth of a yard, or 10 cm. */
export function soldByMm(cloth: Cloth, units: ClothShade["units"]): number {
  return cloth.soldByMm ?? (units.system === "imperial" ? MM_PER_YARD / 8 : 100);
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
export function cutLayer(input: ClothInput, layer: Layer, cloth: Cloth): Worked<CutStory> {
  const { shade, size } = input;
  const { shape, story } = chooseTurn(input, layer, cloth);
  const { repeat } = cloth;
  const { added } = shape;
  const of = { layer, added, slantShare: slantShare(cloth) };
  const shrink = shrinkOf(cloth, shape.turned);
  const width = CUT_WIDTH.figure(
    { W: size.finishedWidthMm, a: sumOf(added, "widthMm"), z: shrink.width },
    of,
  );
  const length = CUT_LENGTH.figure(
    { L: size.finishedLengthMm, a: sumOf(added, "lengthMm"), z: shrink.length },
    of,
  );
  const [cutWidthMm, cutLengthMm] = [width.value, length.value];
  const off = offTheBoltMm(shade, cloth, shape);
  const inRepeats = inWholeRepeats(layer, shape, repeat?.verticalMm);
  const bolt = BOLT_LENGTH.figure(
    { n: shape.drops, C: off.pitchMm, x: off.halfDropMm + off.placementMm, E: shape.laidMm },
    { layer, ...(off.halfDropMm > 0 ? { halfDrop: shade.making.pattern.halfDropRule } : {}) },
  );
  const cut: BareCut = {
    layer,
    clothId: cloth.id,
    clothName: cloth.name,
    colour: colourOf(cloth, USUAL_KIND[layer]),
    cutWidthMm,
    cutLengthMm,
    repeatLengthMm: inRepeats[0]?.value ?? off.pitchMm,
    usableWidthMm: cloth.usableWidthMm,
    widths: shape.drops,
    panels: shape.panels,
    lays: shape.lays,
    lengthMm: bolt.value,
    makeUp: [
      { label: "finished", widthMm: size.finishedWidthMm, lengthMm: size.finishedLengthMm },
      ...added.map(({ label, widthMm, lengthMm: longer }) => ({ label, widthMm, lengthMm: longer })),
      ...shrinkage(size, added, cutWidthMm, cutLengthMm),
    ],
    edges: shape.edges,
    turned: shape.turned,
    joinsAt: shape.joins.at,
    seamsMm: shape.seamsMm,
    startWasteMm: shape.startWasteMm,
    ...(shape.motif === undefined ? {} : { motif: shape.motif }),
    ...(shape.motif === undefined ? {} : repeatSwatch(cloth.photo)),
    ...(repeat === undefined ? {} : { repeatMm: repeat.verticalMm, match: repeat.match }),
  };
  return { values: { cut, cloth, shape, turn: story }, workings: [width, length, ...inRepeats, bolt] };
}

/** One drop raised to whole repeats, and the cloth before the first cut; nothing on plain cloth. */
function inWholeRepeats(layer: Layer, shape: LayerShape, repeatMm: number | undefined): Figure[] {
  if (repeatMm === undefined) return [];
  const alongMm = shape.turned ? shape.cutWidthMm : shape.cutLengthMm;
  return [
    REPEAT_LENGTH.figure({ C: alongMm, R: repeatMm }, { layer }),
    START.figure({ R: repeatMm, h: repeatMm - shape.startWasteMm }, { layer }),
  ];
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
