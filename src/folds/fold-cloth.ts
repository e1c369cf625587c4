import { type Figure, type FigureInput, figureRuleOf } from "../figures/index.ts";
import { bendingOf, type Cloth, type LayerCloths, layersThicknessMm, USUAL_KIND } from "../job/index.ts";
import { type FoldCloth, rigidityNmm, weightNPerMm2 } from "../mechanics/index.ts";
import { type ClothFeel, LAYER_NAMES, LAYERS, type Layer, massByCarrier } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { FoldsInput } from "./folds-input.ts";

/** One layer as its folds feel it. */
export interface FoldLayer {
  layer: Layer;
  cloth: Cloth;
  bendingMm: number;
  measured: boolean;
}

export function foldLayers(cloths: LayerCloths): FoldLayer[] {
  return LAYERS.flatMap((layer) => {
    const cloth = cloths[layer];
    return cloth === undefined ? [] : [{ layer, cloth, ...bendingOf(cloth, USUAL_KIND[layer]) }];
  });
}

/** All layers as one cloth: loose layers slide on each other, so weights and rigidities add. */
export function clothFeel(cloths: LayerCloths): ClothFeel {
  const layers = foldLayers(cloths);
  const sum = (of: (layer: FoldLayer) => number) => layers.reduce((total, layer) => total + of(layer), 0);
  return {
    weightNPerMm2: sum(({ cloth }) => weightNPerMm2(cloth.massGsm)),
    rigidityNmm: sum(({ cloth, bendingMm }) => rigidityNmm(cloth.massGsm, bendingMm)),
    thicknessMm: layersThicknessMm(cloths),
    measured: layers.every(({ measured }) => measured),
  };
}

/** The same as it hangs in folds: with the skirt below them and the pane behind. */
export function foldCloth(
  { shade, size, grid, mass }: FoldsInput,
  layers: readonly FoldLayer[],
): { cloth: FoldCloth; bending: Figure } {
  const gsm = layers.reduce((sum, { cloth }) => sum + cloth.massGsm, 0);
  const bending = bendingTogether(layers);
  const weight = weightNPerMm2(gsm);
  const skirtMm = grid.bottomSectionMm;
  const barNPerMm = (massByCarrier(mass).barKg * GRAVITY) / size.finishedWidthMm;
  const clothNPerMm = weight * skirtMm;
  const total = clothNPerMm + barNPerMm;
  return {
    bending,
    cloth: {
      weightNPerMm2: weight,
      rigidityNmm: rigidityNmm(gsm, bending.value),
      thicknessMm: layersThicknessMm(shade.cloths),
      skirt: {
        lengthMm: skirtMm,
        weightNPerMm: total,
        centreMm: total > 0 ? ((clothNPerMm / 2 + barNPerMm) * skirtMm) / total : skirtMm / 2,
      },
      // The cloth hangs from the front of the board, so glass or wall is a board's depth behind it.
      paneMm: shade.board.depthMm,
    },
  };
}

const TOGETHER = figureRuleOf<readonly FoldLayer[]>()({
  id: "folds.bending-length",
  label: "Bending length of all layers",
  symbol: "c",
  unit: "mm",
  formula: (layers) => {
    const terms = layers.map((_, i) => `m${i + 1}·c${i + 1}^3`).join(" + ");
    const masses = layers.map((_, i) => `m${i + 1}`).join(" + ");
    return `((${terms}) / (${masses}))^(1/3)`;
  },
  inputs: (layers) =>
    Object.fromEntries(
      layers.flatMap(({ layer, measured }, i): [string, FigureInput<readonly FoldLayer[]>][] => {
        const name = LAYER_NAMES[layer].toLowerCase();
        return [
          [`m${i + 1}`, ["g/m2", `${name}: mass per area`, `shade/${layer}`]],
          [`c${i + 1}`, ["mm", `${name}: bending length${measured ? "" : ", a guess"}`, `shade/${layer}`]],
        ];
      }),
    ),
  restsOn: LAYERS.map((layer) => `shade/${layer}`),
  cite: cite("peirce-1930"),
  note: "loose layers: masses and stiffnesses add",
  compute: (given, layers) => {
    let [stiffness, mass] = [0, 0];
    layers.forEach((_, i) => {
      const gsm = given[`m${i + 1}`] ?? 0;
      stiffness += gsm * (given[`c${i + 1}`] ?? 0) ** 3;
      mass += gsm;
    });
    return Math.cbrt(stiffness / mass);
  },
});

function bendingTogether(layers: readonly FoldLayer[]): Figure {
  const given: Record<string, number> = {};
  layers.forEach(({ cloth, bendingMm }, i) => {
    given[`m${i + 1}`] = cloth.massGsm;
    given[`c${i + 1}`] = bendingMm;
  });
  return TOGETHER.figure(given, layers);
}
