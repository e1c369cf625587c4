import { cite, type Sourced, sourced } from "../sources/index.ts";
import type { ClothKind } from "./cloth.ts";
import type { Cloth } from "./parts.ts";
import type { LayerCloths } from "./resolve.ts";

const guess = (value: number, range: string) =>
  sourced(value, "mm", cite("from-memory", `bending length ${range}`));

/**
 * Bending length of cloths that nobody measured, mm. Measured dress cloths lie between 23 and 39 mm (Wang, Ramamoorthi
 * & O’Brien, ACM Transactions on Graphics 30(4) (2011), table of materials); for these kinds no published value was found.
 */
export const USUAL_BENDING_MM: Record<ClothKind, Sourced<number>> = {
  sheer: guess(16, "12 to 20 mm"),
  cotton: guess(25, "23 to 30 mm"),
  linen: guess(28, "22 to 35 mm"),
  velvet: guess(27, "20 to 35 mm"),
  canvas: guess(40, "30 to 50 mm"),
  lining: guess(20, "16 to 24 mm"),
  interlining: guess(20, "16 to 26 mm"),
  blackout: guess(33, "25 to 45 mm, coated"),
};

/** How to measure a cloth at home, in words: the cantilever test of IS 6490:1971 with what is in a workroom. */
export const MEASURE_STIFFNESS =
  "Cut a strip 25 mm (1 in) wide along the length, slide it over a straight edge until its end hangs on a line that falls 88 mm for every 100 mm (7 in for every 8); half the length that hangs over is the bending length. Take both faces and both ends, and the mean.";

/** Bending length of one cloth as measured, else as its kind, or its place among the layers, lets one guess. */
export function bendingOf(
  { bendingLengthMm, kind }: Pick<Cloth, "bendingLengthMm" | "kind">,
  usual: ClothKind,
): { bendingMm: number; measured: boolean } {
  return bendingLengthMm === undefined
    ? { bendingMm: USUAL_BENDING_MM[kind ?? usual].value, measured: false }
    : { bendingMm: bendingLengthMm, measured: true };
}

/** Where a cloth's thickness was not given: mass over this density. */
const CLOTH_DENSITY = sourced(450, "kg/m3", cite("from-memory", "woven cotton, loosely"));

export function clothThicknessMm({ thicknessMm, massGsm }: Pick<Cloth, "thicknessMm" | "massGsm">): number {
  return thicknessMm ?? massGsm / CLOTH_DENSITY.value;
}

/** All layers of a shade together, mm. */
export function layersThicknessMm({ face, interlining, blackout, lining }: LayerCloths): number {
  return [face, interlining, blackout, lining].reduce(
    (sum, cloth) => sum + (cloth === undefined ? 0 : clothThicknessMm(cloth)),
    0,
  );
}

/** How far gathered folds, pressed and tied, stand off each other, over their bare thickness. */
export const LOFT = sourced(2, "ratio", cite("from-memory", "1.5 to 2; the looser taken"));
