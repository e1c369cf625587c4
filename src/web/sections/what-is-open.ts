import type { Finding, Severity } from "../../figures/index.ts";
import { asShown } from "../findings/severity-counts.ts";
import type { Question } from "./questions.ts";
import { type SectionId, sectionOfStage } from "./sections.ts";

/** What waits in one section. */
export interface Waiting {
  stop: number;
  fix: number;
  questions: number;
}

export type WaitingBySection = Partial<Record<SectionId, Waiting>>;

/** What stands in each section of a window's page, counted as it is shown there: one card for one cause. */
function shownIn(findings: readonly Finding[]): { section: SectionId; severity: Severity }[] {
  const bySection = new Map<SectionId, Finding[]>();
  for (const finding of findings) {
    const section = sectionOfStage(finding.stage);
    const known = bySection.get(section);
    if (known === undefined) bySection.set(section, [finding]);
    else known.push(finding);
  }
  return [...bySection].flatMap(([section, found]) =>
    asShown(found).map(({ severity }) => ({ section, severity })),
  );
}

/** The same of every shade, by its id; what the job or a room has is left out. */
export function shownByShade(findings: readonly Finding[]): Map<string, { severity: Severity }[]> {
  const byShade = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.shadeId === undefined) continue;
    const known = byShade.get(finding.shadeId);
    if (known === undefined) byShade.set(finding.shadeId, [finding]);
    else known.push(finding);
  }
  return new Map([...byShade].map(([id, found]) => [id, shownIn(found)]));
}

/** What waits in each section of a window's page: what stops or spoils the shade, and what was not said. */
export function waitingIn(findings: readonly Finding[], questions: readonly Question[]): WaitingBySection {
  const waiting: WaitingBySection = {};
  const at = (section: SectionId): Waiting => {
    const known = waiting[section] ?? { stop: 0, fix: 0, questions: 0 };
    waiting[section] = known;
    return known;
  };
  for (const { section, severity } of shownIn(findings)) {
    if (severity === "stop" || severity === "fix") at(section)[severity] += 1;
  }
  for (const { section } of questions) at(section).questions += 1;
  return waiting;
}
