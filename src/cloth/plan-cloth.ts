import type { Finding, WorkingBook } from "../figures/index.ts";
import type { Cloth, ResolvedShade } from "../job/index.ts";
import {
  type ClothPlan,
  LAYERS,
  type Layer,
  type LayerCut,
  type Mass,
  ribCount,
  type Size,
  type Trim,
  type TrimBolt,
} from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";
import { bandingCloth, bandsOf, bottomBandCloth } from "./bands.ts";
import { boardTrims } from "./board-trims.ts";
import type { ClothInput } from "./cloth-input.ts";
import { cutLayer, soldByMm } from "./cut-layer.ts";
import { hemCorner } from "./hem-corner.ts";
import { judgeCloth } from "./judge-cloth.ts";
import { layTrims } from "./lay-trims.ts";
import { massOf } from "./mass.ts";
import { ribLines } from "./rib-lines.ts";
import { sleeves } from "./sleeves.ts";
import { writeBuy, writeOwnBuy } from "./write-layer.ts";

/** Strips for pockets that are cut apart: 3 in wide, half an inch shorter than the shade (“Roman blinds”, 2012). */
const STRIP_WIDTH_MM = inches(3);
const STRIP_SHORTER_MM = inches(0.5);

/** Cut sizes, joins, repeats and length to buy of every layer; what is cut beside them; pocket lines; the mass of it all. */
export function planCloth(
  input: ClothInput,
  book: WorkingBook,
): { cloth: ClothPlan; mass: Mass; findings: Finding[] } {
  const { resolved, size, grid, form } = input;
  const cuts = LAYERS.flatMap((layer) => {
    const used = resolved.cloths[layer];
    return used === undefined ? [] : [cutLayer(input, layer, used, book)];
  });
  const bare = cuts.map(({ cut }) => cut);
  const cloths = clothsOf(resolved);
  const ribbed = form.ribs.rows.length > 0;
  const { shorterMm } = resolved.making.ribs;
  const sewn = { ...strips(resolved, size, ribCount(form)), ...sleeves(resolved, size, grid, book) };
  const { trims: bandTrims, bands } = bandsOf(input);
  const trims = [...boardTrims(resolved, size, grid, book), ...bandTrims, ...sewnTrims(resolved, sewn)];
  const trimBolts = layTrims(trims, bare, cloths).map((bolt) => bought(bolt, resolved, cloths, book));
  const beyondMm = (layer: Layer) => trimBolts.find((bolt) => bolt.beside === layer)?.lengthMm ?? 0;
  const layers = cuts.map(({ cut, cloth }): LayerCut => {
    const stepMm = soldByMm(cloth, resolved);
    return { ...cut, buyMm: writeBuy(book, cut.layer, cut.lengthMm, beyondMm(cut.layer), stepMm) };
  });
  const cloth: ClothPlan = {
    layers,
    trims,
    trimBolts,
    bands,
    corner: hemCorner(resolved),
    ribLines: ribLines(resolved, grid, form),
    ...(ribbed ? { ribLengthMm: Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - shorterMm) } : {}),
    ...sewn,
  };
  return {
    cloth,
    mass: massOf(input, cloth, cloths, book),
    findings: judgeCloth(input, cuts, cloth, cloths),
  };
}

/** A cloth of which only bands or strips are cut, with what is bought of it. */
function bought(
  bolt: TrimBolt,
  resolved: ResolvedShade,
  cloths: ReadonlyMap<string, Cloth>,
  book: WorkingBook,
): TrimBolt {
  const cloth = cloths.get(bolt.clothId);
  if (cloth === undefined || bolt.beside !== undefined) return bolt;
  const buyMm = writeOwnBuy(book, cloth, bolt.lengthMm, soldByMm(cloth, resolved));
  return { ...bolt, buyMm };
}

/** Every cloth that goes into the shade, by id. */
function clothsOf(resolved: ResolvedShade): Map<string, Cloth> {
  const used = [...Object.values(resolved.cloths), bandingCloth(resolved), bottomBandCloth(resolved)];
  return new Map(used.flatMap((cloth) => (cloth === undefined ? [] : [[cloth.id, cloth] as const])));
}

function strips(resolved: ResolvedShade, size: Size, count: number): Pick<ClothPlan, "strips"> {
  if (resolved.making.ribs.kind !== "strip-pocket" || count === 0) return {};
  const lengthMm = Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - STRIP_SHORTER_MM);
  return { strips: { count, widthMm: STRIP_WIDTH_MM, lengthMm } };
}

/** Pocket strips and sleeves as pieces to cut, from the lining where there is one. */
function sewnTrims(resolved: ResolvedShade, sewn: Pick<ClothPlan, "strips" | "sleeves">): Trim[] {
  const { face, lining = face } = resolved.cloths;
  const cut = (from: Cloth) => ({ clothId: from.id, clothName: from.name, hangs: true });
  const { strips: pockets, sleeves: over } = sewn;
  return [
    ...(pockets === undefined
      ? []
      : [
          {
            ...cut(resolved.making.ribs.face === "front" ? face : lining),
            id: "pocket-strip",
            label: "Pocket strip",
            count: pockets.count,
            widthMm: pockets.widthMm,
            lengthMm: pockets.lengthMm,
            grain: "free" as const,
            why: "one for each rib",
          },
        ]),
    ...(over === undefined
      ? []
      : [
          {
            ...cut(lining),
            id: "sleeve",
            label: "Sleeve over a cord",
            count: over.count,
            widthMm: over.widthMm,
            lengthMm: over.lengthMm,
            grain: "warp" as const,
            why: "one along each column of rings",
          },
        ]),
  ];
}
