import type { Finding } from "../../figures/index.ts";
import type { Plan } from "../../plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import type { Book } from "../typeset/book.ts";
import { openPage, section } from "../typeset/heading.ts";
import { firstEntryHeight, notedGroups, notedList } from "../typeset/noted-list.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { cardEntries, sharedCauseEntries } from "./cards-text.ts";
import { refusedParts } from "./refused.ts";

/** Every finding, one entry for each cause and the heaviest first, with what would do and its source. */
function findingsSection(book: Book, plan: Plan, findings: readonly Finding[]): void {
  if (findings.length === 0) {
    paragraph(
      book,
      "Nothing was found. That does not prove that nothing is wrong: check the shade on the table and at the window.",
    );
    return;
  }
  notedGroups(book, [{ entries: cardEntries(book, plan, findings) }]);
}

/** What the plan found about this shade. */
export function findingsPage(context: ShadeContext): void {
  const { book, plan, findings } = context;
  openPage(book, { title: "Findings", lead: LEAD });
  findingsSection(book, plan, findings);
  refusedParts(context);
}

/** What the plan found about the job as a whole, and causes that several of its shades have. */
export function jobFindingsPage(book: Book, plan: Plan): void {
  openPage(book, { title: "Findings for the whole job", lead: LEAD });
  findingsSection(book, plan, plan.findings);
  const shared = sharedCauseEntries(book, plan);
  if (shared.length === 0) return;
  section(book, "One cause, several shades", firstEntryHeight(book, shared));
  notedList(book, shared);
}

const LEAD = "What cannot be, will work badly, is worth knowing, or still needs a test.";
