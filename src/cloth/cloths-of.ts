import type { Cloth } from "../job/index.ts";
import { bandingCloth, bottomBandCloth } from "./bands.ts";
import type { ClothShade } from "./cloth-input.ts";

/** Every cloth that goes into the shade, by id. */
export function clothsOf(shade: Pick<ClothShade, "cloths" | "bandCloths">): Map<string, Cloth> {
  const cloths = new Map<string, Cloth>();
  for (const cloth of Object.values(shade.cloths)) if (cloth) cloths.set(cloth.id, cloth);
  for (const cloth of [bandingCloth(shade), bottomBandCloth(shade)]) cloths.set(cloth.id, cloth);
  return cloths;
}
