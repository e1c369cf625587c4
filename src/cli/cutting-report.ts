import {
  type ClothCutting,
  type CuttingPlan,
  clothGapWords,
  type LengthsCutting,
  lengthsGapWords,
  newClothMm,
} from "../plan/index.ts";
import { clothLengthText, type UnitChoice } from "../units/index.ts";
import { counted } from "../words/index.ts";
import { plainLine } from "./plain-text.ts";

/** Each cloth and each thing by the length in a line: what it takes, and how near that is to the least. */
export function cuttingText({ cloths, lengths, units }: CuttingPlan): string {
  return [...cloths.map((one) => clothLine(one, units)), ...lengths.map(lengthsLine)]
    .map((line) => `${plainLine(line)}\n`)
    .join("");
}

function clothLine(one: ClothCutting, units: UnitChoice): string {
  const { clothName, newBoltId, answer, problem } = one;
  const pieces = counted(problem.pieces.length, "piece");
  if (!("bolts" in answer)) return `${clothName}: ${pieces}. ${clothGapWords(one, units)}`;
  const held = answer.bolts.filter(({ boltId }) => boltId !== newBoltId).length;
  const newMm = newClothMm(one);
  const parts = [
    pieces,
    ...(newMm > 0 || held === 0 ? [`${clothLengthText(newMm, units)} of new cloth`] : []),
    ...(held === 0 ? [] : [`${held} from stock`]),
  ];
  return `${clothName}: ${parts.join(", ")}. ${clothGapWords(one, units)}`;
}

function lengthsLine(one: LengthsCutting): string {
  const { name, newStockIds, noun, answer } = one;
  if (answer.kind === "infeasible") return `${name}: ${lengthsGapWords(one)}`;
  const { bars, toMeasure } = answer.plan;
  const bought = bars.filter(({ stockId }) => newStockIds.includes(stockId)).length;
  const parts = [
    ...(newStockIds.length === 0 ? [] : [`${bought} new ${bought === 1 ? noun : `${noun}s`}`]),
    ...(bars.length > bought ? [`${bars.length - bought} from stock`] : []),
    ...(toMeasure.length > 0 ? [`${toMeasure.length} cut to their own length`] : []),
  ];
  return `${name}: ${parts.join(", ")}. ${lengthsGapWords(one)}`;
}
