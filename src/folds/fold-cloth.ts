import { type Figure, type FigureInput, figureRule, figureRuleOf } from "../figures/index.ts";
import {
  bendingOf,
  type Cloth,
  type LayerCloths,
  layersThicknessMm,
  type ResolvedMaking,
  type ResolvedShade,
  USUAL_KIND,
} from "../job/index.ts";
import { type FoldCloth, rigidityNmm, weightNPerMm2 } from "../mechanics/index.ts";
import { type ClothFeel, LAYER_NAMES, LAYERS, type Layer, massByCarrier } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { FoldsInput } from "./folds-input.ts";

/** What of a shade tells how its cloth feels. */
type FeltShade = Pick<ResolvedShade, "cloths"> & { making: Pick<ResolvedMaking, "lining"> };

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

/** Layers that are glued or fused to one another; one alone has nothing to be bonded to. */
export function areBonded({ making }: Pick<FeltShade, "making">, layers: readonly FoldLayer[]): boolean {
  return making.lining.bonded && layers.length > 1;
}

/** Whether how stiff all layers are together is known and not guessed. */
export function isMeasured(shade: Pick<FeltShade, "making">, layers: readonly FoldLayer[]): boolean {
  return areBonded(shade, layers)
    ? shade.making.lining.bondedBendingMm !== undefined
    : layers.every(({ measured }) => measured);
}

/**
 * All layers as one cloth: loose layers slide on each other, so weights and rigidities add. Bonded ones are stiffer: as
 * measured, else no less than that.
 */
export function clothFeel(shade: FeltShade): ClothFeel {
  const layers = foldLayers(shade.cloths);
  const sum = (of: (layer: FoldLayer) => number) => layers.reduce((total, layer) => total + of(layer), 0);
  const { bondedBendingMm } = shade.making.lining;
  return {
    weightNPerMm2: sum(({ cloth }) => weightNPerMm2(cloth.massGsm)),
    rigidityNmm:
      areBonded(shade, layers) && bondedBendingMm !== undefined
        ? rigidityNmm(
            sum(({ cloth }) => cloth.massGsm),
            bondedBendingMm,
          )
        : sum(({ cloth, bendingMm }) => rigidityNmm(cloth.massGsm, bendingMm)),
    thicknessMm: layersThicknessMm(shade.cloths),
    measured: isMeasured(shade, layers),
  };
}

/** The same as it hangs in folds: with the skirt below them and the pane behind. */
export function foldCloth(
  { shade, size, grid, mass }: FoldsInput,
  layers: readonly FoldLayer[],
): { cloth: FoldCloth; bending: Figure } {
  const { weightNPerMm2: weight, rigidityNmm, thicknessMm } = clothFeel(shade);
  const bending = bendingTogether(shade, layers);
  const skirtMm = grid.bottomSectionMm;
  const barNPerMm = (massByCarrier(mass).barKg * GRAVITY) / size.finishedWidthMm;
  const clothNPerMm = weight * skirtMm;
  const total = clothNPerMm + barNPerMm;
  return {
    bending,
    cloth: {
      weightNPerMm2: weight,
      rigidityNmm,
      thicknessMm,
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

interface Together {
  layers: readonly FoldLayer[];
  bonded: boolean;
}

const TOGETHER = figureRuleOf<Together>()({
  id: "folds.bending-length",
  label: "Bending length of all layers",
  symbol: "c",
  unit: "mm",
  formula: ({ layers }) => {
    const terms = layers.map((_, i) => `m${i + 1}·c${i + 1}^3`).join(" + ");
    const masses = layers.map((_, i) => `m${i + 1}`).join(" + ");
    return `((${terms}) / (${masses}))^(1/3)`;
  },
  inputs: ({ layers }) =>
    Object.fromEntries(
      layers.flatMap(({ layer, measured }, i): [string, FigureInput<Together>][] => {
        const name = LAYER_NAMES[layer].toLowerCase();
        return [
          [`m${i + 1}`, ["g/m2", `${name}: mass per area`, `shade/${layer}`]],
          [`c${i + 1}`, ["mm", `${name}: bending length${measured ? "" : ", a guess"}`, `shade/${layer}`]],
        ];
      }),
    ),
  restsOn: [...LAYERS.map((layer) => `shade/${layer}`), "lining/bonded"],
  cite: cite("peirce-1930"),
  note: ({ bonded }) =>
    bonded
      ? "as if the layers were loose: bonded they are stiffer, so take it for the least"
      : "loose layers: masses and stiffnesses add",
  compute: (given, { layers }) => {
    let [stiffness, mass] = [0, 0];
    layers.forEach((_, i) => {
      const gsm = given[`m${i + 1}`] ?? 0;
      stiffness += gsm * (given[`c${i + 1}`] ?? 0) ** 3;
      mass += gsm;
    });
    return Math.cbrt(stiffness / mass);
  },
});

const BONDED = figureRule({
  id: "folds.bending-length",
  label: "Bending length of all layers, bonded",
  symbol: "c",
  unit: "mm",
  formula: "b",
  inputs: { b: ["mm", "measured on a strip of all layers", "lining/bondedBendingMm", "lining/bonded"] },
  restsOn: LAYERS.map((layer) => `shade/${layer}`),
  cite: cite("peirce-1930"),
  compute: ({ b }) => b,
});

function bendingTogether(shade: FeltShade, layers: readonly FoldLayer[]): Figure {
  const bonded = areBonded(shade, layers);
  const { bondedBendingMm } = shade.making.lining;
  if (bonded && bondedBendingMm !== undefined) return BONDED.figure({ b: bondedBendingMm });
  const given: Record<string, number> = {};
  layers.forEach(({ cloth, bendingMm }, i) => {
    given[`m${i + 1}`] = cloth.massGsm;
    given[`c${i + 1}`] = bendingMm;
  });
  return TOGETHER.figure(given, { layers, bonded });
}
