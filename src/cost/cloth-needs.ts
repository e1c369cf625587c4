import type { Cloth } from "../job/index.ts";
import { LAYERS, type LayerCut, type TrimBolt } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { NeedsInput } from "./cost-input.ts";
import type { Need, RunningNeed } from "./need.ts";
import { clothStepMm, clothUnit } from "./sold.ts";

/** Cloth of every layer, and of the pieces beside them where no offcut gives them. */
export function clothNeeds({ shade, cloth: plan }: NeedsInput): Need[] {
  const needs: Need[] = [];
  for (const layer of LAYERS) {
    const cut = plan.layers.find((one) => one.layer === layer);
    const cloth = shade.cloths[layer];
    if (cut && cloth) needs.push(layerNeed(cut, cloth, shade.units));
  }
  const cloths = [...Object.values(shade.cloths), ...Object.values(shade.bandCloths)];
  for (const bolt of plan.trimBolts) {
    const cloth = cloths.find((one) => one?.id === bolt.clothId);
    if (cloth && bolt.lengthMm > 0) needs.push(trimNeed(bolt, cloth, shade.units));
  }
  return needs;
}

/** What the pieces take beyond the panels of a layer, or all that they take of a cloth of their own. */
function trimNeed(bolt: TrimBolt, cloth: Cloth, units: UnitChoice): RunningNeed {
  const beyond = bolt.lays.filter((lay) => lay.yMm >= bolt.fromMm - 1e-6);
  const widthMm = Math.max(0, ...beyond.map((lay) => lay.xMm + lay.widthMm));
  return running(cloth, [bolt.lengthMm], Math.min(widthMm, bolt.usableWidthMm), units);
}

function running(cloth: Cloth, cutsMm: number[], widthMm: number, units: UnitChoice): RunningNeed {
  return {
    sort: "running",
    id: `cloth-${cloth.id}`,
    group: "cloth",
    label: cloth.name,
    price: cloth.pricePerM,
    demo: cloth.demo,
    stockId: cloth.id,
    cutsMm,
    widthMm,
    stepMm: cloth.soldByMm ?? clothStepMm(units),
    unit: clothUnit(units),
    plain: cloth.repeat === undefined,
  };
}

function layerNeed(cut: LayerCut, cloth: Cloth, units: UnitChoice): RunningNeed {
  const widthMm = Math.max(0, ...cut.lays.map((lay) => lay.xMm + lay.widthMm));
  return running(cloth, dropsOf(cut, cloth), Math.min(widthMm, cut.usableWidthMm), units);
}

/**
 * Lengths that must each come off in one piece. Plain cloth is cut drop by drop, so that remnants serve;
 * widths that match must come off one bolt.
 */
function dropsOf(cut: LayerCut, cloth: Cloth): number[] {
  if (cloth.repeat !== undefined) return [cut.lengthMm];
  const starts = [...new Set(cut.lays.map((lay) => lay.yMm))].sort((a, b) => a - b);
  if (starts.length < 2) return [cut.lengthMm];
  return starts.map((yMm, index) => (starts[index + 1] ?? cut.lengthMm) - yMm);
}
