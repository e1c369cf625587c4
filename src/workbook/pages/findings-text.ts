import { type Finding, type Remedy, SEVERITY_WORDS } from "../../figures/index.ts";
import { citeText } from "../../sources/index.ts";
import type { Book } from "../typeset/book.ts";
import type { Noted } from "../typeset/noted-list.ts";
import { drawSeverityMark, MARK_WIDTH, SEVERITY_PAINTS } from "../typeset/severity-mark.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";

/** What would do, on one line. */
export function remediesText(remedies: readonly Remedy[], word = "What would do"): string | undefined {
  if (remedies.length === 0) return undefined;
  return `${word}: ${remedies.map(({ label }) => label).join(" · ")}.`;
}

/** A finding as an entry of a list: mark and word, the sentence, what would do, where it comes from. */
export function findingEntry(book: Book, finding: Finding): Noted {
  const { severity, text, cite } = finding;
  const would = remediesText(finding.remedies);
  return {
    mark: { widthPt: MARK_WIDTH, draw: (x, y) => drawSeverityMark(book.pen, severity, x, y) },
    word: SEVERITY_WORDS[severity],
    wordStyle: painted(TYPE.strong, SEVERITY_PAINTS[severity]),
    text: [
      { words: text, style: TYPE.body },
      ...(would === undefined ? [] : [{ words: would, style: TYPE.cell }]),
      { words: `Source: ${citeText(cite)}.`, style: TYPE.small },
    ],
  };
}
