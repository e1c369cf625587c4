import type { Cloth, MotifAcross } from "../job/index.ts";
import {
  LAYER_NAMES,
  type Lay,
  type Layer,
  type LayerCut,
  type Motif,
  type Panel,
} from "../shade-plan/index.ts";
import type { JoinStory } from "./choose-joins.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import type { Joined } from "./joins.ts";
import { type Allowance, beforeShrinkingMm, edgesOf, sumOf } from "./make-up.ts";
import type { Flat } from "./place-motif.ts";

/** One layer upright or turned sideways: its cut size, its panels and how they lie on a bolt that begins with a repeat. */
export interface LayerShape {
  turned: boolean;
  added: Allowance[];
  cutWidthMm: number;
  cutLengthMm: number;
  edges: LayerCut["edges"];
  panels: Panel[];
  lays: Lay[];
  drops: number;
  joins: JoinStory;
  seamsMm: number[];
  startWasteMm: number;
  laidMm: number;
  motif?: Motif;
  /** How the pattern falls across, and how far it misses that place, mm. */
  across: MotifAcross;
  missMm: number;
}

/** Shrinkage still to come, along the width and the length of the shade. */
export function shrinkOf(cloth: Cloth, turned: boolean): { width: number; length: number } {
  const [across, along] = [cloth.shrinkWidth ?? 0, cloth.shrinkLength ?? 0];
  return turned ? { width: along, length: across } : { width: across, length: along };
}

/** What bow and skew take off a piece that is squared, for each millimetre of its width on the bolt. */
export function slantShare(cloth: Cloth): number {
  return (cloth.bowShare ?? 0) + (cloth.skewShare ?? 0);
}

/** Bow and skew as an allowance. */
export function slant(key: "widthMm" | "lengthMm", mm: number): Allowance[] {
  if (mm <= 0) return [];
  const place = key === "widthMm" ? "sides" : "top";
  return [{ label: "bow and skew", widthMm: 0, lengthMm: 0, [key]: mm, place }];
}

/** Between its hems, as cut. */
export function flatOf(
  { shade, size }: ClothInput,
  layer: Layer,
  added: readonly Allowance[],
  shrink: { width: number; length: number },
): Flat {
  const edges = edgesOf(shade, layer, added);
  const widthMm = size.finishedWidthMm + sumOf(added, "widthMm") - edges.leftMm - edges.rightMm;
  const lengthMm = size.finishedLengthMm + sumOf(added, "lengthMm") - edges.topMm - edges.bottomMm;
  return {
    edges: {
      leftMm: beforeShrinkingMm(edges.leftMm, shrink.width),
      topMm: beforeShrinkingMm(edges.topMm, shrink.length),
    },
    widthMm: beforeShrinkingMm(widthMm, shrink.width),
    lengthMm: beforeShrinkingMm(lengthMm, shrink.length),
    finishedWidthMm: size.finishedWidthMm,
    finishedLengthMm: size.finishedLengthMm,
    shrinkWidth: shrink.width,
    shrinkLength: shrink.length,
  };
}

/** Cloth past the finished outline at each edge, mm as cut. */
export function cutEdges(
  shade: ClothShade,
  layer: Layer,
  added: readonly Allowance[],
  shrink: { width: number; length: number },
): LayerCut["edges"] {
  const { leftMm, rightMm, topMm, bottomMm } = edgesOf(shade, layer, added);
  return {
    leftMm: beforeShrinkingMm(leftMm, shrink.width),
    rightMm: beforeShrinkingMm(rightMm, shrink.width),
    topMm: beforeShrinkingMm(topMm, shrink.length),
    bottomMm: beforeShrinkingMm(bottomMm, shrink.length),
  };
}

/** Panels of a layer from the left with ids and labels, all `lengthMm` long as cut. */
export function namePanels(layer: Layer, joined: Joined, lengthMm: number): Panel[] {
  const count = joined.panels.length;
  return joined.panels.map((panel, i) => ({
    id: `${layer}-${i + 1}`,
    label: panel.label ?? (count === 1 ? LAYER_NAMES[layer] : `${LAYER_NAMES[layer]} ${i + 1} of ${count}`),
    widthMm: panel.widthMm,
    lengthMm,
    joinedXMm: panel.joinedXMm,
    full: panel.full,
  }));
}
