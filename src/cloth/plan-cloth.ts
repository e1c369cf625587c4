import type { Finding, WorkingBook } from "../account/index.ts";
import type { Cloth } from "../job/index.ts";
import { type ClothPlan, LAYERS, type LayerCut, type Mass } from "../shade/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import { cutLayer, STRIP_SHORTER_MM, STRIP_WIDTH_MM } from "./cut-layer.ts";
import { judgeCloth } from "./judge-cloth.ts";
import { massOf } from "./mass.ts";
import { ribLines } from "./rib-lines.ts";
import { sleeves } from "./sleeves.ts";

/** Cut sizes, joins, repeats and length to buy of every layer; pocket lines; the mass of it all. */
export function planCloth(
  input: ClothInput,
  book: WorkingBook,
): { cloth: ClothPlan; mass: Mass; findings: Finding[] } {
  const { brief, size, grid, form } = input;
  const cloths = new Map<string, Cloth>();
  const layers: LayerCut[] = [];
  for (const layer of LAYERS) {
    const used = brief.cloths[layer];
    if (used === undefined) continue;
    cloths.set(used.id, used);
    layers.push(cutLayer(input, layer, used, book));
  }
  const { kind, shorterMm } = brief.making.ribs;
  const ribbed = form.ribs.rows.length > 0;
  const cloth: ClothPlan = {
    layers,
    ribLines: ribLines(brief, grid, form),
    ...(ribbed ? { ribLengthMm: Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - shorterMm) } : {}),
    ...(kind === "strip-pocket"
      ? {
          strips: {
            count: form.ribs.rows.length,
            widthMm: STRIP_WIDTH_MM,
            lengthMm: Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - STRIP_SHORTER_MM),
          },
        }
      : {}),
    ...sleeves(brief, size, grid, book),
  };
  return {
    cloth,
    mass: massOf(input, cloth, cloths, book),
    findings: judgeCloth(brief, grid, layers, cloths),
  };
}
