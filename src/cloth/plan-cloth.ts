import { type Figure, type StageResult, staged, type Worked } from "../figures/index.ts";
import type { Cloth } from "../job/index.ts";
import {
  type ClothPlan,
  LAYERS,
  type LayerCut,
  ribCount,
  type Size,
  type Trim,
  type TrimBolt,
} from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";
import { bandsOf } from "./bands.ts";
import { boardTrims } from "./board-trims.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import { clothsOf } from "./cloths-of.ts";
import { type CutStory, cutLayer, soldByMm } from "./cut-layer.ts";
import { frillTrims } from "./frill.ts";
import { hemCorner } from "./hem-corner.ts";
import { judgeCloth } from "./judge-cloth.ts";
import { layTrims } from "./lay-trims.ts";
import { BUY, OWN_BUY } from "./layer-figures.ts";
import { ribLines } from "./rib-lines.ts";
import { sleeves } from "./sleeves.ts";

/** Strips for pockets that are cut apart: 3 in wide, half an inch shorter than the shade (“Roman blinds”, 2012). */
const STRIP_WIDTH_MM = inches(3);
const STRIP_SHORTER_MM = inches(0.5);

/** Cut sizes, joins, repeats and length to buy of every layer; what is cut beside them; pocket lines. */
export function planCloth(input: ClothInput): StageResult<ClothPlan> {
  const { shade, size, grid, form } = input;
  const cuts = LAYERS.flatMap((layer) => {
    const used = shade.cloths[layer];
    return used === undefined ? [] : [cutLayer(input, layer, used)];
  });
  const stories = cuts.map(({ values }) => values);
  const cloths = clothsOf(shade);
  const ribbed = form.ribs.rows.length > 0;
  const { shorterMm } = shade.making.ribs;
  const sleeved = sleeves(shade, size, grid);
  const sewn = { ...strips(shade, size, ribCount(form)), ...sleeved.values };
  const { trims: bandTrims, bands } = bandsOf(input);
  const ofBoard = boardTrims(shade, size, grid);
  const frilled = frillTrims(shade, form);
  const trims = [...ofBoard.values, ...bandTrims, ...frilled.values, ...sewnTrims(shade, sewn)];
  const bought = boughtBolts(
    layTrims(
      trims,
      stories.map(({ cut }) => cut),
      cloths,
    ),
    shade,
    cloths,
  );
  const layers = boughtLayers(stories, bought.values, shade);
  const cloth: ClothPlan = {
    layers: layers.values,
    trims,
    trimBolts: bought.values,
    bands,
    corner: hemCorner(shade),
    ribLines: ribLines(shade, grid, form),
    ...(ribbed ? { ribLengthMm: Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - shorterMm) } : {}),
    ...sewn,
  };
  return staged(cloth, {
    findings: () => judgeCloth(input, stories, cloth, cloths),
    workings: () => [...cuts, sleeved, ofBoard, frilled, bought, layers].flatMap(({ workings }) => workings),
  });
}

/** Every layer with what is bought for it and for the pieces beside it. */
function boughtLayers(
  stories: readonly CutStory[],
  bolts: readonly TrimBolt[],
  shade: ClothShade,
): Worked<LayerCut[]> {
  const workings = stories.map(({ cut, cloth }) => {
    const beyondMm = bolts.find((bolt) => bolt.beside === cut.layer)?.lengthMm ?? 0;
    return BUY.figure(
      { Q: cut.lengthMm, t: beyondMm, s: soldByMm(cloth, shade.units) },
      { layer: cut.layer },
    );
  });
  return { values: stories.map(({ cut }, i) => ({ ...cut, buyMm: workings[i]?.value ?? 0 })), workings };
}

/** Cloths of which only bands or strips are cut, with what is bought of them. */
function boughtBolts(
  bolts: readonly TrimBolt[],
  shade: ClothShade,
  cloths: ReadonlyMap<string, Cloth>,
): Worked<TrimBolt[]> {
  const workings: Figure[] = [];
  const values = bolts.map((bolt) => {
    const cloth = cloths.get(bolt.clothId);
    if (cloth === undefined || bolt.beside !== undefined) return bolt;
    const buy = OWN_BUY.figure(
      { Q: bolt.lengthMm, s: soldByMm(cloth, shade.units) },
      { clothId: cloth.id, clothName: cloth.name },
    );
    workings.push(buy);
    return { ...bolt, buyMm: buy.value };
  });
  return { values, workings };
}

function strips(shade: ClothShade, size: Size, count: number): Pick<ClothPlan, "strips"> {
  if (shade.making.ribs.kind !== "strip-pocket" || count === 0) return {};
  const lengthMm = Math.max(size.finishedWidthMm / 2, size.finishedWidthMm - STRIP_SHORTER_MM);
  return { strips: { count, widthMm: STRIP_WIDTH_MM, lengthMm } };
}

/** Pocket strips and sleeves as pieces to cut, from the lining where there is one. */
function sewnTrims(shade: ClothShade, sewn: Pick<ClothPlan, "strips" | "sleeves">): Trim[] {
  const { face, lining = face } = shade.cloths;
  const cut = (from: Cloth) => ({ clothId: from.id, clothName: from.name, hangs: true });
  const { strips: pockets, sleeves: over } = sewn;
  return [
    ...(pockets === undefined
      ? []
      : [
          {
            ...cut(shade.making.ribs.face === "front" ? face : lining),
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
            label: "Cord sleeve",
            count: over.count,
            widthMm: over.widthMm,
            lengthMm: over.lengthMm,
            grain: "warp" as const,
            why: "one along each column of rings",
          },
        ]),
  ];
}
