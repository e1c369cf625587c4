import type { Finding, WorkingBook } from "../account/index.ts";
import type { Brief, Cloth } from "../job/index.ts";
import { type ClothPlan, type Grid, LAYERS, type LayerCut, type Mass, type Size } from "../shade/index.ts";
import { cutLayer, STRIP_SHORTER_MM, STRIP_WIDTH_MM } from "./cut-layer.ts";
import { judgeCloth } from "./judge-cloth.ts";
import { massOf } from "./mass.ts";
import { ribLines } from "./rib-lines.ts";
import { sleeves } from "./sleeves.ts";

/** Cut sizes, joins, repeats and length to buy of every layer; pocket lines; the mass of it all. */
export function planCloth(
  brief: Brief,
  size: Size,
  grid: Grid,
  book: WorkingBook,
): { cloth: ClothPlan; mass: Mass; findings: Finding[] } {
  const cloths = new Map<string, Cloth>();
  const layers: LayerCut[] = [];
  for (const layer of LAYERS) {
    const used = brief.cloths[layer];
    if (used === undefined) continue;
    cloths.set(used.id, used);
    layers.push(cutLayer(brief, size, grid, layer, used, book));
  }
  const { kind, shorterMm } = brief.making.ribs;
  const ribbed = kind !== "none";
  const cloth: ClothPlan = {
    layers,
    ribLines: ribLines(brief, grid),
    ...(ribbed ? { ribLengthMm: Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - shorterMm) } : {}),
    ...(kind === "strip-pocket"
      ? {
          strips: {
            count: grid.rows.length,
            widthMm: STRIP_WIDTH_MM,
            lengthMm: Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - STRIP_SHORTER_MM),
          },
        }
      : {}),
    ...sleeves(brief, size, grid, book),
  };
  return {
    cloth,
    mass: massOf(brief, size, grid, cloth, cloths, book),
    findings: judgeCloth(brief, grid, layers, cloths),
  };
}
