import { type Finding, isGrave, type Severity } from "../../figures/index.ts";
import { asShown } from "../../plan/index.ts";
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
  return [...groupedBy(findings, ({ stage }) => sectionOfStage(stage))].flatMap(([section, found]) =>
    asShown(found).map(({ severity }) => ({ section, severity })),
  );
}

/** The same of every shade, by its id; what the job or a room has is left out. */
export function shownByShade(findings: readonly Finding[]): Map<string, { severity: Severity }[]> {
  const byShade = groupedBy(findings, ({ shadeId }) => shadeId);
  return new Map([...byShade].map(([id, found]) => [id, shownIn(found)]));
}

/** In the order in which their groups begin; what has no key is in none. */
function groupedBy<K>(
  findings: readonly Finding[],
  keyOf: (one: Finding) => K | undefined,
): Map<K, Finding[]> {
  const groups = new Map<K, Finding[]>();
  for (const finding of findings) {
    const key = keyOf(finding);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  }
  return groups;
}

/** What waits in each section of a window's page: what stops or spoils the shade, and what was not said. */
export function waitingIn(findings: readonly Finding[], questions: readonly Question[]): WaitingBySection {
  const waiting: WaitingBySection = {};
  const at = (section: SectionId): Waiting => {
    const known = waiting[section] ?? { stop: 0, fix: 0, questions: 0 };
    waiting[section] = known;
    return known;
  };
  for (const { section, severity } of shownIn(findings).filter(isGrave)) at(section)[severity] += 1;
  for (const { section } of questions) at(section).questions += 1;
  return waiting;
}
