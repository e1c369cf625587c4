import type { LayerCut } from "./cloth.ts";
import type { CutApart, Form } from "./form.ts";

/** A piece of a layer that is cut apart, as it is cut. */
export interface PieceApart extends CutApart {
  lengthMm: number;
}

/**
 * What a layer is cut in: its panels, or the pieces of a face that is cut apart. Where one of those is wider than the
 * cloth it would need a join within it, which a finding tells: then the widths are cut, and they out of them.
 */
export function cutOf(
  { layer, cutLengthMm, usableWidthMm, turned }: LayerCut,
  { apart }: Pick<Form, "apart">,
): { apart?: PieceApart[] } {
  if (layer !== "face" || turned || apart === undefined) return {};
  if (apart.some(({ widthMm }) => widthMm > usableWidthMm)) return {};
  return { apart: apart.map((one) => ({ ...one, lengthMm: cutLengthMm })) };
}
