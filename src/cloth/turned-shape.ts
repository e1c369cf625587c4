import type { Cloth, MotifAcross } from "../job/index.ts";
import type { Lay, Layer } from "../shade-plan/index.ts";
import { remainderMm } from "../units/index.ts";
import { NO_JOINS } from "./choose-joins.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import { inOnePiece } from "./joins.ts";
import { cutEdges, flatOf, type LayerShape, namePanels, shrinkOf, slant, slantShare } from "./layer-shape.ts";
import { allowances, beforeShrinkingMm, sumOf } from "./make-up.ts";
import {
  acrossIsKnown,
  acrossRepeatMm,
  type Flat,
  firstColumnMm,
  motifOf,
  repeatBelowTopMm,
  repeatBesideMiddleMm,
  USUAL_ACROSS,
} from "./place-motif.ts";

/** In one piece, its length across the bolt; undefined where the cloth is too narrow for that. */
export function turnedShape(input: ClothInput, layer: Layer, cloth: Cloth): LayerShape | undefined {
  const { shade, size, form } = input;
  const shrink = shrinkOf(cloth, true);
  const plain = allowances(shade, size, form, layer);
  const cutLengthMm = beforeShrinkingMm(size.finishedLengthMm + sumOf(plain, "lengthMm"), shrink.length);
  const usableMm = cloth.usableWidthMm;
  if (cutLengthMm > usableMm + 1e-9) return undefined;
  const added = [...plain, ...slant("widthMm", slantShare(cloth) * cutLengthMm)];
  const cutWidthMm = beforeShrinkingMm(size.finishedWidthMm + sumOf(added, "widthMm"), shrink.width);
  const flat = flatOf(input, layer, added, shrink);
  const { repeat } = cloth;
  const { across = USUAL_ACROSS } = shade.making.pattern;
  const placed = repeat && placeTurned(shade, flat, repeat, { usableMm, cutLengthMm, across });
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
    across,
    added,
    cutWidthMm,
    cutLengthMm,
    edges: cutEdges(shade, layer, added, shrink),
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
  shade: ClothShade,
  flat: Flat,
  repeat: NonNullable<Cloth["repeat"]>,
  { usableMm, cutLengthMm, across }: { usableMm: number; cutLengthMm: number; across: MotifAcross },
) {
  const acrossKnown = acrossIsKnown(repeat, usableMm, 0);
  const onLengthMm = acrossRepeatMm(repeat, usableMm, 0);
  const besideMiddleMm = repeatBesideMiddleMm(shade, flat, repeat.verticalMm, across);
  const fromLeftMm = flat.edges.leftMm + flat.widthMm / 2 + besideMiddleMm;
  const belowTopMm = repeatBelowTopMm(shade, flat, onLengthMm);
  const spareMm = usableMm - cutLengthMm;
  const wantedMm = acrossKnown
    ? remainderMm(firstColumnMm(repeat, onLengthMm, usableMm) + belowTopMm - cutLengthMm, onLengthMm)
    : spareMm / 2;
  const fits = wantedMm <= spareMm + 1e-9;
  const motif = motifOf(shade, flat, repeat, {
    besideMiddleMm,
    acrossMm: repeat.verticalMm,
    alongMm: onLengthMm,
    acrossKnown,
  });
  return {
    startMm: remainderMm(-fromLeftMm, repeat.verticalMm),
    boltXMm: fits ? wantedMm : spareMm / 2,
    missMm: fits ? 0 : Math.abs(wantedMm - spareMm / 2),
    // Columns of a half drop lie sideways: only rows of a straight match can be told.
    motif: { ...motif, match: "straight" as const },
  };
}
