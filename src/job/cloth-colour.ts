import type { ClothKind } from "./cloth.ts";
import type { Cloth } from "./parts.ts";
import type { LayerCloths } from "./resolve.ts";

/** What a layer is taken for where the kind of its cloth was not given. */
export const USUAL_KIND: Record<keyof LayerCloths, ClothKind> = {
  face: "cotton",
  interlining: "interlining",
  blackout: "blackout",
  lining: "lining",
};

/** Colours of undyed cloth, for pictures of cloths whose own was not given: an eye's choice, no measure. */
const USUAL_COLOUR: Record<ClothKind, string> = {
  sheer: "#f3f0e6",
  cotton: "#d9c7a3",
  linen: "#c9b58f",
  velvet: "#7f6a5d",
  canvas: "#d5c8ab",
  lining: "#efe9dc",
  interlining: "#ece4d3",
  blackout: "#f1f0ec",
};

/** Colour of a cloth, `#rrggbb`: its own, else that of its kind. */
export function colourOf({ colour, kind }: Pick<Cloth, "colour" | "kind">, usual: ClothKind): string {
  return colour?.toLowerCase() ?? USUAL_COLOUR[kind ?? usual];
}
