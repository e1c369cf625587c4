import { type Finding, lazy, type Remedy, type Severity } from "../../figures/index.ts";
import type { RuleResult } from "../../shade-plan/index.ts";
import type { ActiveRule } from "../rules/rules-for.ts";
import type { SafetyShade } from "../safety-reads.ts";
import { cordCause } from "./cord-causes.ts";

/** The finding of all rules that are not proven. */
export const NOT_PROVEN = "safety.not-proven";

/** The finding of a failed rule. */
export function findingIdOf(ruleId: string): string {
  return `safety.${ruleId.toLowerCase()}`;
}

/**
 * What binds by law, or by the standard that the law of the place points to, stops what is made for others; advice and
 * our own rounding do not, nor anything at the maker’s own window.
 */
export function severityOf(rule: Pick<ActiveRule, "kind">, shade: SafetyShade): Severity {
  return rule.kind !== "advice" && isForOthers(shade) ? "stop" : "fix";
}

/** Sold, given, or hung where the public is. */
export function isForOthers({ place, purpose }: Pick<SafetyShade, "place" | "purpose">): boolean {
  return place !== undefined && purpose !== undefined && purpose !== "own-home";
}

export function failedFinding(
  shade: SafetyShade,
  rule: ActiveRule,
  result: RuleResult,
  remediesOf: () => Remedy[],
): Finding {
  const remedies = lazy(remediesOf);
  return {
    id: findingIdOf(rule.id),
    severity: severityOf(rule, shade),
    stage: "safety",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade`,
    text: `${result.words} Failed: ${lowerFirst(result.why)}${reservation(shade, rule)}`,
    cite: rule.cite,
    ...(result.cords === undefined ? {} : { cause: cordCause(result.cords) }),
    ...(result.figures === undefined ? {} : { figures: result.figures }),
    get remedies() {
      return remedies();
    },
  };
}

function reservation(shade: SafetyShade, { confidence, kind }: ActiveRule): string {
  const sources: Record<ActiveRule["confidence"], string> = {
    V1: "",
    V2: " The limit stands here as reported by secondary sources: check the current text.",
    ours: " This is our own rounding down of the rules of many places, not a legal limit.",
  };
  const own =
    shade.purpose === "own-home" && kind !== "advice" && confidence !== "ours"
      ? " It is your own window, and the hazard is the same."
      : "";
  return `${sources[confidence]}${own}`;
}

/** One finding for all that only a test or the maker can settle. */
export function openFinding(
  shade: SafetyShade,
  open: readonly RuleResult[],
  tests: readonly string[],
  remediesOf: () => Remedy[],
): Finding[] {
  const first = open[0];
  if (first === undefined) return [];
  const remedies = lazy(remediesOf);
  const toTest =
    tests.length === 0 ? "" : ` Tests to do, described in the review: ${tests.map(lowerFirst).join("; ")}.`;
  return [
    {
      id: NOT_PROVEN,
      severity: "unproven",
      stage: "safety",
      shadeId: shade.shadeId,
      path: `${shade.path}/shade`,
      text: `${open.length} ${open.length === 1 ? "rule is" : "rules are"} not proven, since a plan cannot show it.${toTest}`,
      cite: first.cite,
      cases: open.length,
      get remedies() {
        return remedies();
      },
    },
  ];
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
