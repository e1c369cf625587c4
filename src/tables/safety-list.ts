import type { ShadePlan } from "../plan/index.ts";
import { CONFIDENCE_NAMES, RULE_OUTCOME_NAMES, type RuleResult, STATUS_NAMES } from "../shade-plan/index.ts";
import { citeText } from "../sources/index.ts";
import type { UnitChoice } from "../units/index.ts";
import type { PlanList } from "./plan-list.ts";
import { asciiText, type Cell, listMm, textAndMm } from "./table.ts";

/** Every rule that was evaluated for a shade, the heaviest outcome first, with where it was read. */
export const SAFETY_LIST: PlanList = {
  name: "safety-list",
  header: [
    "room",
    "window",
    "rule",
    "words",
    "outcome",
    "why",
    "value",
    "limit",
    "unit",
    "pullN",
    "worstRaisedShare",
    "worstHemBelowTop",
    "worstHemBelowTopMm",
    "worstHemAboveFloor",
    "worstHemAboveFloorMm",
    "source",
    "status",
    "asOf",
    "confidence",
  ],
  rowsOfShade: (shade, { units }) => shade.safety.results.map((result) => resultRow(shade, result, units)),
};

function resultRow({ roomName, windowName }: ShadePlan, result: RuleResult, units: UnitChoice): Cell[] {
  const { worst } = result;
  return [
    roomName,
    windowName,
    result.ruleId,
    asciiText(result.words),
    RULE_OUTCOME_NAMES[result.outcome],
    asciiText(result.why),
    amount(result.value),
    result.limit ?? "",
    result.unit,
    result.pullN ?? "",
    worst === undefined ? "" : Math.round(worst.raise * 1000) / 1000,
    ...length(worst?.hemBelowTopMm, units),
    ...length(worst?.hemAboveFloorMm, units),
    citeText(result.cite),
    STATUS_NAMES[result.status],
    result.asOf,
    CONFIDENCE_NAMES[result.confidence],
  ];
}

function amount(value: number | undefined): Cell {
  return value === undefined ? "" : listMm(value);
}

function length(lengthMm: number | undefined, units: UnitChoice): Cell[] {
  return lengthMm === undefined ? ["", ""] : textAndMm(lengthMm, units);
}
