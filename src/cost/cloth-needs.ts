import type { Cloth } from "../job/index.ts";
import { LAYERS, type LayerCut } from "../shade/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { CostInput } from "./cost-input.ts";
import type { Need, RunningNeed } from "./need.ts";
import { type Strips, stripsToBuy } from "./offcuts.ts";
import { clothStepMm, clothUnit } from "./sold.ts";

/** Cloth of every layer, and of the board's cover, pocket strips and sleeves where no offcut gives them. */
export function clothNeeds(input: CostInput): Need[] {
  const { brief, cloth: plan } = input;
  const needs: Need[] = [];
  for (const layer of LAYERS) {
    const cut = plan.layers.find((one) => one.layer === layer);
    const cloth = brief.cloths[layer];
    if (cut && cloth) needs.push(layerNeed(cut, cloth, brief.units));
  }
  const from = plan.layers.find((cut) => cut.layer === "lining") ?? plan.layers[0];
  const trim = from && brief.cloths[from.layer];
  if (from && trim) {
    const bought = stripsToBuy(from, trim.usableWidthMm, stripsOf(input, trim.usableWidthMm));
    if (bought.lengthMm > 0) needs.push(running(trim, [bought.lengthMm], bought.widthMm, brief.units));
  }
  return needs;
}

/**
 * The board's cover, the strips for rib pockets and the sleeves over the cords: small enough to come beside the panels.
 * A cover longer than the bolt is wide is pieced, since its joins lie out of sight.
 */
function stripsOf({ cloth, board }: CostInput, usableWidthMm: number): Strips[] {
  const { widthMm, lengthMm } = board.covering;
  const count = Math.max(1, Math.ceil(lengthMm / usableWidthMm));
  return [
    { count, widthMm, lengthMm: lengthMm / count },
    ...(cloth.strips === undefined ? [] : [cloth.strips]),
    ...(cloth.sleeves === undefined ? [] : [cloth.sleeves]),
  ];
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
