import type { Cloth, ClothKind } from "../../job/index.ts";
import { USUAL_KIND } from "../../job/index.ts";
import type { LayerCut } from "../../shade-plan/index.ts";

/** Share of daylight that comes through one layer of a cloth of its kind: a picture's choice, no measure. */
const THROUGH: Record<ClothKind, number> = {
  sheer: 0.65,
  cotton: 0.3,
  linen: 0.34,
  velvet: 0.05,
  canvas: 0.14,
  lining: 0.35,
  interlining: 0.3,
  blackout: 0,
};

/** Share of daylight that comes through all layers of a shade, or through its face alone. */
export function lightThrough(
  layers: readonly LayerCut[],
  cloths: readonly Pick<Cloth, "id" | "kind">[],
  lined: boolean,
): number {
  return layers
    .filter(({ layer }) => lined || layer === "face")
    .reduce((share, { layer, clothId }) => {
      const kind = cloths.find(({ id }) => id === clothId)?.kind ?? USUAL_KIND[layer];
      return share * THROUGH[kind];
    }, 1);
}
