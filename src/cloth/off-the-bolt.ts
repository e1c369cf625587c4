import type { Cloth } from "../job/index.ts";
import type { ClothShade } from "./cloth-input.ts";
import type { LayerShape } from "./layer-shape.ts";
import { halfDropExtraMm, repeatLengthMm } from "./repeats.ts";

/** Length that a layer takes off the bolt, and what it is made of, mm. */
export interface OffTheBolt {
  /** Length of one drop, raised to whole repeats. */
  pitchMm: number;
  halfDropMm: number;
  placementMm: number;
  lengthMm: number;
}

/** The published rule, or to the end of the last piece as it really lies in the repeat, whichever is more. */
export function offTheBoltMm(shade: ClothShade, cloth: Cloth, shape: LayerShape): OffTheBolt {
  const { repeat } = cloth;
  const alongMm = shape.turned ? shape.cutWidthMm : shape.cutLengthMm;
  if (repeat === undefined) {
    const lengthMm = Math.max(shape.drops * alongMm, shape.laidMm);
    return { pitchMm: alongMm, halfDropMm: 0, placementMm: 0, lengthMm };
  }
  const { halfDropRule, placementRepeat } = shade.making.pattern;
  const pitchMm = repeatLengthMm(alongMm, repeat.verticalMm);
  const halfDropMm = halfDropExtraMm(repeat, alongMm, shape.drops, halfDropRule);
  const placementMm = placementRepeat ? repeat.verticalMm : 0;
  const lengthMm = Math.max(shape.drops * pitchMm + halfDropMm + placementMm, shape.laidMm);
  return { pitchMm, halfDropMm, placementMm, lengthMm };
}
