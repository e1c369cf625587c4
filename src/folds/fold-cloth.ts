import type { WorkingBook } from "../figures/index.ts";
import {
  bendingOf,
  type Cloth,
  type ClothKind,
  layersThicknessMm,
  type ResolvedShade,
} from "../job/index.ts";
import { type FoldCloth, rigidityNmm, weightNPerMm2 } from "../mechanics/index.ts";
import { LAYER_NAMES, LAYERS, type Layer, massByCarrier } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { FoldsInput } from "./folds-input.ts";

/** What a layer is taken for where its kind was not given. */
const USUAL_KIND: Record<Layer, ClothKind> = {
  face: "cotton",
  interlining: "interlining",
  blackout: "blackout",
  lining: "lining",
};

/** One layer as its folds feel it. */
export interface FoldLayer {
  layer: Layer;
  cloth: Cloth;
  bendingMm: number;
  measured: boolean;
}

export function foldLayers({ cloths }: ResolvedShade): FoldLayer[] {
  return LAYERS.flatMap((layer) => {
    const cloth = cloths[layer];
    return cloth === undefined ? [] : [{ layer, cloth, ...bendingOf(cloth, USUAL_KIND[layer]) }];
  });
}

/** All layers as one cloth: loose layers slide on each other, so weights and rigidities add. */
export function foldCloth(
  { resolved, size, grid, mass }: FoldsInput,
  layers: readonly FoldLayer[],
  book: WorkingBook,
): { cloth: FoldCloth; bendingMm: number } {
  const gsm = layers.reduce((sum, { cloth }) => sum + cloth.massGsm, 0);
  const bendingMm = togetherMm(layers, book);
  const weight = weightNPerMm2(gsm);
  const skirtMm = grid.bottomSectionMm;
  const barNPerMm = (massByCarrier(mass).barKg * GRAVITY) / size.finishedWidthMm;
  const clothNPerMm = weight * skirtMm;
  const total = clothNPerMm + barNPerMm;
  return {
    bendingMm,
    cloth: {
      weightNPerMm2: weight,
      rigidityNmm: rigidityNmm(gsm, bendingMm),
      thicknessMm: layersThicknessMm(resolved.cloths),
      skirt: {
        lengthMm: skirtMm,
        weightNPerMm: total,
        centreMm: total > 0 ? ((clothNPerMm / 2 + barNPerMm) * skirtMm) / total : skirtMm / 2,
      },
      // The cloth hangs from the front of the board, so glass or wall is a board's depth behind it.
      paneMm: resolved.board.depthMm,
    },
  };
}

function togetherMm(layers: readonly FoldLayer[], book: WorkingBook): number {
  const given: Record<string, readonly [number, "g/m2" | "mm", string]> = {};
  layers.forEach(({ layer, cloth, bendingMm, measured }, i) => {
    const name = LAYER_NAMES[layer].toLowerCase();
    given[`m${i + 1}`] = [cloth.massGsm, "g/m2", `${name}: mass per area`];
    given[`c${i + 1}`] = [bendingMm, "mm", `${name}: bending length${measured ? "" : ", a guess"}`];
  });
  const terms = layers.map((_, i) => `m${i + 1}·c${i + 1}^3`).join(" + ");
  const masses = layers.map((_, i) => `m${i + 1}`).join(" + ");
  return book.figure("folds.bending-length", {
    label: "Bending length of all layers",
    symbol: "c",
    unit: "mm",
    formula: `((${terms}) / (${masses}))^(1/3)`,
    given,
    cite: cite("peirce-1930"),
    note: "loose layers: masses and stiffnesses add",
    compute: (values) => {
      let [stiffness, mass] = [0, 0];
      layers.forEach((_, i) => {
        const gsm = values[`m${i + 1}`] ?? 0;
        stiffness += gsm * (values[`c${i + 1}`] ?? 0) ** 3;
        mass += gsm;
      });
      return Math.cbrt(stiffness / mass);
    },
  });
}
