import type { Finding } from "../../figures/index.ts";
import type { Question } from "./questions.ts";
import { type SectionId, sectionOfStage } from "./sections.ts";

/** What waits in one section. */
export interface Waiting {
  stop: number;
  fix: number;
  questions: number;
}

export type WaitingBySection = Partial<Record<SectionId, Waiting>>;

/** What waits in each section of a window's page: what stops or spoils the shade, and what was not said. */
export function waitingIn(findings: readonly Finding[], questions: readonly Question[]): WaitingBySection {
  const waiting: WaitingBySection = {};
  const at = (section: SectionId): Waiting => {
    const known = waiting[section] ?? { stop: 0, fix: 0, questions: 0 };
    waiting[section] = known;
    return known;
  };
  for (const { severity, stage } of findings) {
    if (severity === "stop" || severity === "fix") at(sectionOfStage(stage))[severity] += 1;
  }
  for (const { section } of questions) at(section).questions += 1;
  return waiting;
}
