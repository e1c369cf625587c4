import { figureRule, type Worked } from "../figures/index.ts";
import type { Form, Trim } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { ClothShade } from "./cloth-input.ts";
import { beforeShrinkingMm } from "./make-up.ts";
import { TURN } from "./turned-under.ts";

const DEPTH_INPUT = ["mm", "depth that shows", "gather/frillMm", "gather/frillDouble"] as const;

const SINGLE_DEPTH = figureRule({
  id: "cloth.frill-cut-depth",
  label: "Frill, hemmed: cut depth of a strip",
  symbol: "d_c",
  unit: "mm",
  formula: "d + 2·e",
  inputs: { d: DEPTH_INPUT, e: ["mm", "turned under along either edge"] },
  cite: TURN.cite,
  compute: ({ d, e }) => d + 2 * e,
});

const DOUBLE_DEPTH = figureRule({
  id: "cloth.frill-cut-depth",
  label: "Frill, made double: cut depth of a strip",
  symbol: "d_c",
  unit: "mm",
  formula: "2·(d + s)",
  inputs: { d: DEPTH_INPUT, s: ["mm", "seam on the face", "hems/seamMm"] },
  cite: cite("geometry", "folded lengthwise, both raw edges in one seam"),
  compute: ({ d, s }) => 2 * (d + s),
});

/** Widths of cloth that a frill takes end to end: 72 in of frill are two widths of 36 in cloth (“How to make Austrian blinds/shades”). */
export function frillWidths(frillMm: number, usableWidthMm: number): number {
  return Math.max(1, Math.ceil(frillMm / usableWidthMm - 1e-9));
}

/** Strips across the face cloth, from selvedge to selvedge, that are joined end to end and gathered. */
export function frillTrims(
  { cloths: { face }, making, units }: Pick<ClothShade, "cloths" | "making" | "units">,
  { frill }: Pick<Form, "frill">,
): Worked<Trim[]> {
  if (frill === undefined) return { values: [], workings: [] };
  const { depthMm, double, clothMm } = frill;
  const depth = double
    ? DOUBLE_DEPTH.figure({ d: depthMm, s: making.hems.seamMm })
    : SINGLE_DEPTH.figure({ d: depthMm, e: TURN.value });
  const trim: Trim = {
    id: "frill",
    label: "Frill",
    clothId: face.id,
    clothName: face.name,
    count: frillWidths(clothMm, face.usableWidthMm * (1 - (face.shrinkWidth ?? 0))),
    widthMm: beforeShrinkingMm(depth.value, face.shrinkLength),
    lengthMm: face.usableWidthMm,
    grain: "weft",
    why: `${lengthText(clothMm, units)} of frill ${lengthText(depthMm, units)} deep, ${double ? "made double" : "hemmed along both edges"}`,
    hangs: true,
  };
  return { values: [trim], workings: [depth] };
}
