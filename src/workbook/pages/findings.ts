import { bySeverity, type Finding } from "../../figures/index.ts";
import type { Caution } from "../../shade-plan/index.ts";
import { citeText } from "../../sources/index.ts";
import type { Book } from "../book.ts";
import { type ChapterHead, openChapter, section } from "../heading.ts";
import { notedList } from "../noted-list.ts";
import { paragraph } from "../paragraph.ts";
import type { ShadeContext } from "../shade-context.ts";
import { TYPE } from "../type-scale.ts";
import { findingEntry } from "./findings-text.ts";

/** Every finding, the heaviest first, with what would do and its source. */
export function findingsList(book: Book, findings: readonly Finding[]): void {
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

function cautionSources(book: Book, cautions: readonly Caution[]): void {
  section(book, "Where the cautions come from", 80);
  notedList(
    book,
    cautions.map(({ title, cite }) => ({
      word: title,
      wordStyle: TYPE.cellStrong,
      text: [{ words: cite === undefined ? "No source." : `${citeText(cite)}.`, style: TYPE.cell }],
    })),
  );
}

/** What the plan found about this shade, and where the cautions of its first sheet come from. */
export function findingsPage({ book, shade, findings }: ShadeContext, head: ChapterHead): void {
  openChapter(book, {
    ...head,
    lead: "What cannot be, will work badly, is worth knowing, or still needs a test.",
  });
  findingsList(book, findings);
  if (shade.cautions.length > 0) cautionSources(book, shade.cautions);
}
