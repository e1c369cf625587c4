import type { Finding } from "../../figures/index.ts";
import { shareEqual } from "../../plan/index.ts";
import { newId } from "../persistence/new-id.ts";
import type { JobSummary } from "./job-summary.ts";

type Others = Omit<JobSummary, "findings">;

/** A summary as it goes between threads: of one that the asker has, only what is another now. */
export interface SummaryNews {
  /** Names this answer. */
  id: string;
  changed: Partial<Others>;
  /** How many findings there are. */
  findings: number;
  /** Those that are others than before at their place in the list. */
  changedFindings: [at: number, finding: Finding][];
}

const OTHERS = ["jobId", "rooms", "cost"] as const satisfies readonly (keyof Others)[];

/** Tells summaries to one asker. To copy thousands of findings takes longer than a keystroke may. */
export class SummaryTeller {
  #told: { id: string; summary: JobSummary } | undefined;

  /** @param known the name of the answer that the asker has; one of another life of this worker is not known here */
  tell(next: JobSummary, known: string | undefined): SummaryNews {
    const before = known !== undefined && this.#told?.id === known ? this.#told.summary : undefined;
    const summary = shareEqual(before, next);
    const id = newId("summary");
    this.#told = { id, summary };
    const changed = OTHERS.filter((part) => before === undefined || summary[part] !== before[part]);
    return {
      id,
      changed: Object.fromEntries(changed.map((part) => [part, summary[part]])),
      findings: summary.findings.length,
      changedFindings: [...summary.findings.entries()].filter(
        ([at, finding]) => before?.findings[at] !== finding,
      ),
    };
  }
}

/** The summary of an answer; what it leaves out is as it was, and all of it where it says nothing new. */
export function heardSummary(before: JobSummary | undefined, news: SummaryNews): JobSummary {
  const { changed, findings, changedFindings } = news;
  const isSameList = changedFindings.length === 0 && before?.findings.length === findings;
  if (before !== undefined && isSameList && Object.keys(changed).length === 0) return before;
  const summary = { ...before, ...changed } as JobSummary;
  if (isSameList) return summary;
  const list = (before?.findings ?? []).slice(0, findings);
  for (const [at, finding] of changedFindings) list[at] = finding;
  return { ...summary, findings: list };
}
