import type { WorkingBook } from "../account/index.ts";
import { type Brief, bendingOf, type Cloth, type ClothKind, layersThicknessMm } from "../job/index.ts";
import { type FoldCloth, rigidityNmm, weightNPerMm2 } from "../mechanics/index.ts";
import { type ClothFeel, LAYER_NAMES, LAYERS, type Layer, massByPlace } from "../shade/index.ts";
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

export function foldLayers({ cloths }: Brief): FoldLayer[] {
  return LAYERS.flatMap((layer) => {
    const cloth = cloths[layer];
    return cloth === undefined ? [] : [{ layer, cloth, ...bendingOf(cloth, USUAL_KIND[layer]) }];
  });
}

/** All layers as one cloth: loose layers slide on each other, so weights and rigidities add. */
export function clothFeel({ cloths }: Brief, layers: readonly FoldLayer[]): ClothFeel {
  const sum = (of: (layer: FoldLayer) => number) => layers.reduce((total, layer) => total + of(layer), 0);
  return {
    weightNPerMm2: sum(({ cloth }) => weightNPerMm2(cloth.massGsm)),
    rigidityNmm: sum(({ cloth, bendingMm }) => rigidityNmm(cloth.massGsm, bendingMm)),
    thicknessMm: layersThicknessMm(cloths),
    measured: layers.every(({ measured }) => measured),
  };
}

/** The same hanging in folds, with the apron below them and the pane behind. */
export function foldCloth(
  { brief, size, grid, mass }: FoldsInput,
  layers: readonly FoldLayer[],
  feel: ClothFeel,
  book: WorkingBook,
): { cloth: FoldCloth; bendingMm: number } {
  const bendingMm = togetherMm(layers, book);
  const weight = feel.weightNPerMm2;
  const apronMm = grid.bottomSectionMm;
  const barNPerMm = (massByPlace(mass).barKg * GRAVITY) / size.finishedWidthMm;
  const clothNPerMm = weight * apronMm;
  const total = clothNPerMm + barNPerMm;
  return {
    bendingMm,
    cloth: {
      weightNPerMm2: weight,
      rigidityNmm: feel.rigidityNmm,
      thicknessMm: feel.thicknessMm,
      apron: {
        lengthMm: apronMm,
        weightNPerMm: total,
        centreMm: total > 0 ? ((clothNPerMm / 2 + barNPerMm) * apronMm) / total : apronMm / 2,
      },
      // The cloth hangs from the front of the board, so glass or wall is a board's depth behind it.
      paneMm: brief.board.depthMm,
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
    reckon: (values) => {
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
