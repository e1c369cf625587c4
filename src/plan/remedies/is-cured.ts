import { type Finding, SEVERITIES } from "../../figures/index.ts";

/**
 * Whether a finding is answered: fewer of its id, or lighter ones, or fewer cases that it tells of; of a choice, that
 * it has changed. A change that brings a new stop cures nothing but another stop: what is unproven asks for a fact,
 * and a fact may show anything.
 */
export function isCured(finding: Finding, before: readonly Finding[], after: readonly Finding[]): boolean {
  const was = sameAs(finding, before);
  const is = sameAs(finding, after);
  const answered = finding.isChoice ? is.every(({ text }) => text !== finding.text) : isLess(was, is);
  return (
    answered &&
    (MAY_STOP.includes(finding.severity) || !bringsStop(before, after)) &&
    (finding.stage !== "safety" || !failsAnew(before, after))
  );
}

/** A way out of one rule on cords that breaks another is none. */
function failsAnew(before: readonly Finding[], after: readonly Finding[]): boolean {
  const failed = ({ stage, severity }: Finding) =>
    stage === "safety" && severity !== "note" && severity !== "unproven";
  return after.some((one) => failed(one) && sameAs(one, before.filter(failed)).length === 0);
}

const MAY_STOP: readonly Finding["severity"][] = ["stop", "unproven"];

function sameAs({ id }: Finding, findings: readonly Finding[]): Finding[] {
  return findings.filter((one) => one.id === id);
}

function isLess(before: readonly Finding[], after: readonly Finding[]): boolean {
  for (const severity of SEVERITIES) {
    const change = countOf(severity, after) - countOf(severity, before);
    if (change !== 0) return change < 0;
  }
  return casesOf(after) < casesOf(before);
}

function countOf(severity: Finding["severity"], findings: readonly Finding[]): number {
  return findings.filter((one) => one.severity === severity).length;
}

function casesOf(findings: readonly Finding[]): number {
  return findings.reduce((sum, { cases = 1 }) => sum + cases, 0);
}

function bringsStop(before: readonly Finding[], after: readonly Finding[]): boolean {
  const stops = (findings: readonly Finding[]) => findings.filter(({ severity }) => severity === "stop");
  return stops(after).some((one) => sameAs(one, stops(after)).length > sameAs(one, stops(before)).length);
}
