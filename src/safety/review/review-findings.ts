import type { Finding, Remedy, Severity } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { RuleResult } from "../../shade-plan/index.ts";
import type { ActiveRule } from "../rules/rules-for.ts";

/** Secondary texts, and our own rounding, never stop the work. */
export function severityOf(rule: Pick<ActiveRule, "confidence" | "kind">, resolved: ResolvedShade): Severity {
  return rule.confidence === "V1" && rule.kind === "rule" && isForOthers(resolved) ? "stop" : "fix";
}

/** Sold, given, or hung where the public is. */
export function isForOthers({ place, purpose }: ResolvedShade): boolean {
  return place !== undefined && purpose !== undefined && purpose !== "own-home";
}

export function failedFinding(
  resolved: ResolvedShade,
  rule: ActiveRule,
  result: RuleResult,
  remedies: Remedy[],
): Finding {
  return {
    id: `safety.${rule.id.toLowerCase()}`,
    severity: severityOf(rule, resolved),
    stage: "safety",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/shade`,
    text: `${rule.words} Failed: ${lowerFirst(result.why)}${reservation(resolved, rule)}`,
    cite: rule.cite,
    ...(result.figures === undefined ? {} : { figures: result.figures }),
    remedies,
  };
}

function reservation(resolved: ResolvedShade, { confidence, kind }: ActiveRule): string {
  const sources: Record<ActiveRule["confidence"], string> = {
    V1: "",
    V2: " The limit stands here as reported by secondary sources: check the current text.",
    ours: " This is our own rounding down of the rules of many places, not a legal limit.",
  };
  const own =
    resolved.purpose === "own-home" && kind !== "advice" && confidence !== "ours"
      ? " It is your own window, and the hazard is the same."
      : "";
  return `${sources[confidence]}${own}`;
}

/** One finding for all that only a test or the maker can settle. */
export function openFinding(
  resolved: ResolvedShade,
  open: readonly RuleResult[],
  tests: readonly string[],
  remedies: Remedy[],
): Finding[] {
  const first = open[0];
  if (first === undefined) return [];
  const ids = open.map(({ ruleId }) => ruleId).join(", ");
  const toTest =
    tests.length === 0 ? "" : ` Tests to do, described in the review: ${tests.map(lowerFirst).join("; ")}.`;
  return [
    {
      id: "safety.not-proven",
      severity: "unproven",
      stage: "safety",
      shadeId: resolved.shadeId,
      path: `${resolved.path}/shade`,
      text: `${open.length} ${open.length === 1 ? "rule is" : "rules are"} not proven, since a plan cannot show it: ${ids}.${toTest}`,
      cite: first.cite,
      remedies,
    },
  ];
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
