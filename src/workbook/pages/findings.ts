import { bySeverity, type Finding } from "../../figures/index.ts";
import type { Plan } from "../../plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import type { Book } from "../typeset/book.ts";
import { openPage } from "../typeset/heading.ts";
import { notedList } from "../typeset/noted-list.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { findingEntry } from "./findings-text.ts";
import { refusedParts } from "./refused.ts";

/** Every finding, the heaviest first, with what would do and its source. */
export function findingsSection(book: Book, findings: readonly Finding[]): void {
  if (findings.length === 0) {
    paragraph(
      book,
      "Nothing was found. That does not prove that nothing is wrong: check the shade on the table and at the window.",
    );
    return;
  }
  notedList(
    book,
    [...findings].sort(bySeverity).map((finding) => findingEntry(book, finding)),
  );
}

/** What the plan found about this shade. */
export function findingsPage(context: ShadeContext): void {
  const { book, findings } = context;
  openPage(book, { title: "Findings", lead: LEAD });
  findingsSection(book, findings);
  refusedParts(context);
}

/** What the plan found about the job as a whole. */
export function jobFindingsPage(book: Book, plan: Plan): void {
  openPage(book, { title: "Findings for the whole job", lead: LEAD });
  findingsSection(book, plan.findings);
}

const LEAD = "What cannot be, will work badly, is worth knowing, or still needs a test.";
