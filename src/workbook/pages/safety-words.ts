import { CONFIDENCE_NAMES, type RuleResult, type RuleSource, STATUS_NAMES } from "../../shade-plan/index.ts";
import { citeText, sourceOf } from "../../sources/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { capital, sentence } from "./sentence.ts";

/** Where a rule was read, whether it holds, when the text was read and how sure that is: one sentence each. */
export function ruleSourceText({ cite, status, asOf, confidence }: RuleSource): string {
  const title = cite.at === undefined ? sourceOf(cite).title : `${sourceOf(cite).title}, ${cite.at}`;
  return `${title}. ${capital(STATUS_NAMES[status])}; ${asOfText(asOf)}. ${confidenceText(confidence)}.`;
}

/** The same with what to beware of in the source. */
export function fullSourceText(rule: RuleSource): string {
  return `${citeText(rule.cite)}. ${capital(STATUS_NAMES[rule.status])}; ${asOfText(rule.asOf)}. ${confidenceText(rule.confidence)}.`;
}

function asOfText(asOf: string): string {
  return asOf === "undated" ? "undated" : `as of ${asOf}`;
}

function confidenceText(confidence: RuleSource["confidence"]): string {
  const name = capital(CONFIDENCE_NAMES[confidence]);
  return confidence === "ours" ? name : `${name} (${confidence})`;
}

export function raiseWords(raise: number): string {
  if (raise <= 0) return "fully lowered";
  if (raise >= 1) return "fully raised";
  return `raised by ${Math.round(raise * 100)} %`;
}

/** The number in words: what it measures, and why it may prove nothing; or why there is none. */
export function comesTo({ what, valueText, open, why }: RuleResult): string {
  if (what === undefined || valueText === undefined) return sentence(why);
  const measured = `${capital(what)}: ${valueText}.`;
  return open === undefined ? measured : `${measured} ${open}`;
}

/** Whether the height of the shade has a part in a result. */
function hasWorst({ what, outcome, worst }: RuleResult): boolean {
  return worst !== undefined && (what !== undefined || outcome === "failed" || worst.raise > 0);
}

/** The height at which it is worst. */
export function worstText({ length }: ShadeContext, result: RuleResult): string {
  const { worst } = result;
  if (worst === undefined || !hasWorst(result)) return "";
  const { raise, hemAboveFloorMm, hemBelowTopMm } = worst;
  const hem =
    hemAboveFloorMm === undefined
      ? `${length(hemBelowTopMm)} below the top line`
      : `${length(hemAboveFloorMm)} above the floor`;
  return `${capital(raiseWords(raise))}, hem ${hem}`;
}
