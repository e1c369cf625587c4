import type { Brief, Cloth, MotifAcross } from "../job/index.ts";
import { LAYER_NAMES, type Lay, type Layer, type LayerCut, type Motif, type Panel } from "../shade/index.ts";
import { chooseJoins, type JoinStory } from "./choose-joins.ts";
import type { ClothInput } from "./cloth-input.ts";
import { inOnePiece, type Joined, moduloMm, seamThatFitsMm } from "./joins.ts";
import { layDrops } from "./lay-drops.ts";
import { type Allowance, allowances, beforeShrinkingMm, edgesOf, sumOf } from "./make-up.ts";
import {
  acrossIsKnown,
  acrossRepeatMm,
  centreOnBolt,
  type Flat,
  firstColumnMm,
  motifOf,
  repeatBelowTopMm,
  repeatBesideMiddleMm,
} from "./place-motif.ts";

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

/** The same shade with the pattern placed across in a given way. */
export function withAcross(input: ClothInput, across: MotifAcross): ClothInput {
  const { brief } = input;
  const pattern = { ...brief.making.pattern, across };
  return { ...input, brief: { ...brief, making: { ...brief.making, pattern } } };
}

/**
 * Its length along the bolt, joined from as many widths as it takes. Where the maker does not say how the pattern is to
 * fall across, a motif comes in the middle, or the gap between two where only that can be centred or takes fewer widths.
 */
export function uprightShape(input: ClothInput, layer: Layer, cloth: Cloth): LayerShape {
  if (input.brief.making.pattern.across !== undefined) return shapeAcross(input, layer, cloth);
  const motif = shapeAcross(withAcross(input, "centre-motif"), layer, cloth);
  if (motif.motif?.acrossKnown !== true) return motif;
  const gap = shapeAcross(withAcross(input, "between-motifs"), layer, cloth);
  const worse = motif.missMm - gap.missMm;
  if (Math.abs(worse) > 0.5) return worse > 0 ? gap : motif;
  return gap.drops < motif.drops ? gap : motif;
}

function shapeAcross(input: ClothInput, layer: Layer, cloth: Cloth): LayerShape {
  const { brief, size, form } = input;
  const shrink = shrinkOf(cloth, false);
  const plain = allowances(brief, size, form, layer);
  const cutWidthMm = beforeShrinkingMm(size.finishedWidthMm + sumOf(plain, "widthMm"), shrink.width);
  const usableMm = cloth.usableWidthMm;
  const seamMm = seamThatFitsMm(brief.making.hems.seamMm, usableMm);
  const single = cutWidthMm <= usableMm + 1e-9;
  const across = flatOf(brief, input, layer, plain, shrink);
  const centre = cloth.repeat
    ? centreOnBolt(brief, across, cloth.repeat, {
        usableMm,
        seamMm,
        ...(single ? { panelMm: cutWidthMm } : {}),
      })
    : { centreMm: single ? cutWidthMm / 2 : usableMm / 2, column: 0, missMm: 0 };
  const repeatAcrossMm = cloth.repeat && acrossRepeatMm(cloth.repeat, usableMm, seamMm);
  const bolt = { usableMm, seamMm, centreMm: centre.centreMm, repeatMm: repeatAcrossMm };
  const { joined, story } = single
    ? { joined: inOnePiece(cutWidthMm, centre.centreMm - cutWidthMm / 2), story: NO_JOINS }
    : chooseJoins(input, cutWidthMm, shrink.width, bolt, across.widthMm);

  const widest = Math.max(...joined.panels.map((panel) => Math.min(panel.widthMm, usableMm)));
  const added = [...plain, ...slant("lengthMm", slantShare(cloth) * widest)];
  const cutLengthMm = beforeShrinkingMm(size.finishedLengthMm + sumOf(added, "lengthMm"), shrink.length);
  const flat = flatOf(brief, input, layer, added, shrink);
  const { across: way = "centre-motif" } = brief.making.pattern;
  const shape = { across: way, added, cutWidthMm, cutLengthMm, edges: cutEdges(brief, layer, added, shrink) };
  const seamsMm = joined.panels
    .slice(1)
    .map((panel) => (panel.joinedXMm + seamMm - shape.edges.leftMm) * (1 - shrink.width));
  if (cloth.repeat === undefined) {
    const panels = namePanels(layer, joined, cutLengthMm);
    const laid = layDrops(dropsOf(panels, joined, []), { sidesShareDrop: joined.sidesShareDrop });
    return {
      ...shape,
      ...laidOf(laid),
      turned: false,
      panels,
      drops: joined.drops,
      joins: story,
      seamsMm,
      missMm: 0,
    };
  }

  const { repeat } = cloth;
  const alongMm = repeat.verticalMm;
  const belowTopMm = repeatBelowTopMm(brief, flat, alongMm);
  const halfMm = repeat.match === "half-drop" ? alongMm / 2 : 0;
  const starts = joined.panels.map(({ columnsOn }) =>
    moduloMm(((centre.column - columnsOn) % 2) * halfMm - belowTopMm, alongMm),
  );
  const firstMm = firstColumnMm(repeat, repeatAcrossMm ?? usableMm, usableMm);
  const acrossKnown = acrossIsKnown(repeat, usableMm, seamMm);
  const panels = namePanels(layer, joined, cutLengthMm).map((panel, i): Panel => {
    const startMm = starts[i] ?? 0;
    if (!acrossKnown || repeatAcrossMm === undefined) return { ...panel, inRepeat: { alongMm: startMm } };
    const beside = (joined.panels[i]?.boltXMm ?? 0) - firstMm;
    const column = Math.floor(beside / repeatAcrossMm + 1e-9);
    return {
      ...panel,
      inRepeat: {
        alongMm: moduloMm(startMm - (column % 2) * halfMm, alongMm),
        acrossMm: Math.max(0, beside - column * repeatAcrossMm),
      },
    };
  });
  const laid = layDrops(dropsOf(panels, joined, starts), {
    repeatMm: alongMm,
    sidesShareDrop: joined.sidesShareDrop,
  });
  const besideMiddleMm = acrossKnown
    ? firstMm + centre.column * (repeatAcrossMm ?? 0) - centre.centreMm
    : -(repeatAcrossMm ?? 0) / 2;
  return {
    ...shape,
    ...laidOf(laid),
    turned: false,
    panels,
    drops: joined.drops,
    joins: story,
    seamsMm,
    missMm: centre.missMm,
    motif: motifOf(brief, flat, repeat, {
      belowTopMm,
      besideMiddleMm,
      acrossMm: repeatAcrossMm ?? usableMm,
      alongMm,
      acrossKnown,
    }),
  };
}

/** In one piece, its length across the bolt; undefined where the cloth is too narrow for that. */
export function turnedShape(input: ClothInput, layer: Layer, cloth: Cloth): LayerShape | undefined {
  const { brief, size, form } = input;
  const shrink = shrinkOf(cloth, true);
  const plain = allowances(brief, size, form, layer);
  const cutLengthMm = beforeShrinkingMm(size.finishedLengthMm + sumOf(plain, "lengthMm"), shrink.length);
  const usableMm = cloth.usableWidthMm;
  if (cutLengthMm > usableMm + 1e-9) return undefined;
  const added = [...plain, ...slant("widthMm", slantShare(cloth) * cutLengthMm)];
  const cutWidthMm = beforeShrinkingMm(size.finishedWidthMm + sumOf(added, "widthMm"), shrink.width);
  const flat = flatOf(brief, input, layer, added, shrink);
  const { repeat } = cloth;
  const placed = repeat && placeTurned(brief, flat, repeat, usableMm, cutLengthMm);
  const startMm = placed?.startMm ?? 0;
  const [panel] = namePanels(layer, inOnePiece(cutWidthMm), cutLengthMm);
  if (panel === undefined) return undefined;
  const lay: Lay = {
    panelId: panel.id,
    xMm: placed?.boltXMm ?? 0,
    yMm: startMm,
    widthMm: cutLengthMm,
    lengthMm: cutWidthMm,
  };
  return {
    turned: true,
    across: brief.making.pattern.across ?? "centre-motif",
    added,
    cutWidthMm,
    cutLengthMm,
    edges: cutEdges(brief, layer, added, shrink),
    panels: [{ ...panel, ...(placed ? { inRepeat: { alongMm: startMm } } : {}) }],
    lays: [lay],
    drops: 1,
    joins: NO_JOINS,
    seamsMm: [],
    startWasteMm: startMm,
    laidMm: startMm + cutWidthMm,
    missMm: placed?.missMm ?? 0,
    ...(placed ? { motif: placed.motif } : {}),
  };
}

/** The pattern lies on its side: its repeat along the bolt counts across the shade, and the other way round. */
function placeTurned(
  brief: Brief,
  flat: Flat,
  repeat: NonNullable<Cloth["repeat"]>,
  usableMm: number,
  cutLengthMm: number,
) {
  const acrossKnown = acrossIsKnown(repeat, usableMm, 0);
  const onLengthMm = acrossRepeatMm(repeat, usableMm, 0);
  const besideMiddleMm = repeatBesideMiddleMm(brief, flat, repeat.verticalMm);
  const fromLeftMm = flat.edges.leftMm + flat.widthMm / 2 + besideMiddleMm;
  const belowTopMm = repeatBelowTopMm(brief, flat, onLengthMm);
  const spareMm = usableMm - cutLengthMm;
  const wantedMm = acrossKnown
    ? moduloMm(firstColumnMm(repeat, onLengthMm, usableMm) + belowTopMm - cutLengthMm, onLengthMm)
    : spareMm / 2;
  const fits = wantedMm <= spareMm + 1e-9;
  const motif = motifOf(brief, flat, repeat, {
    belowTopMm,
    besideMiddleMm,
    acrossMm: repeat.verticalMm,
    alongMm: onLengthMm,
    acrossKnown,
  });
  return {
    startMm: moduloMm(-fromLeftMm, repeat.verticalMm),
    boltXMm: fits ? wantedMm : spareMm / 2,
    missMm: fits ? 0 : Math.abs(wantedMm - spareMm / 2),
    // Columns of a half drop lie sideways: only rows of a straight match can be told.
    motif: { ...motif, match: "straight" as const },
  };
}

export const NO_JOINS: JoinStory = { at: "none", equalDrops: 1 };

function laidOf({ lays, startMm, lengthMm }: ReturnType<typeof layDrops>) {
  return { lays, startWasteMm: startMm, laidMm: lengthMm };
}

function dropsOf(panels: Panel[], joined: Joined, starts: readonly number[]) {
  return panels.map((panel, i) => ({
    panel,
    boltXMm: joined.panels[i]?.boltXMm ?? 0,
    startMm: starts[i] ?? 0,
  }));
}

function slant(key: "widthMm" | "lengthMm", mm: number): Allowance[] {
  if (mm <= 0) return [];
  const place = key === "widthMm" ? "sides" : "top";
  return [{ label: "bow and skew", widthMm: 0, lengthMm: 0, [key]: mm, place }];
}

function flatOf(
  brief: Brief,
  { size }: ClothInput,
  layer: Layer,
  added: readonly Allowance[],
  shrink: { width: number; length: number },
): Flat {
  const edges = edgesOf(brief, layer, added);
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

function cutEdges(
  brief: Brief,
  layer: Layer,
  added: readonly Allowance[],
  shrink: { width: number; length: number },
): LayerCut["edges"] {
  const { leftMm, rightMm, topMm, bottomMm } = edgesOf(brief, layer, added);
  return {
    leftMm: beforeShrinkingMm(leftMm, shrink.width),
    rightMm: beforeShrinkingMm(rightMm, shrink.width),
    topMm: beforeShrinkingMm(topMm, shrink.length),
    bottomMm: beforeShrinkingMm(bottomMm, shrink.length),
  };
}

function namePanels(layer: Layer, joined: Joined, lengthMm: number): Panel[] {
  const count = joined.panels.length;
  return joined.panels.map((panel, i) => ({
    id: `${layer}-${i + 1}`,
    label: count === 1 ? LAYER_NAMES[layer] : `${LAYER_NAMES[layer]} ${i + 1} of ${count}`,
    widthMm: panel.widthMm,
    lengthMm,
    joinedXMm: panel.joinedXMm,
    full: panel.full,
  }));
}
