import type { Finding } from "../../account/index.ts";
import { citeText } from "../../sources/index.ts";
import type { Book } from "../typeset/book.ts";
import type { Noted } from "../typeset/noted-list.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";
import { drawWeightMark, MARK_WIDTH, WEIGHT_PAINTS, WEIGHT_WORDS } from "../typeset/weight-mark.ts";

/** What would answer a finding, on one line. */
export function remediesText({ remedies }: Finding): string | undefined {
  if (remedies.length === 0) return undefined;
  return `What would do: ${remedies.map(({ label }) => label).join(" · ")}.`;
}

/** A finding as an entry of a list: mark and word, the sentence, what would do, where it comes from. */
export function findingEntry(book: Book, finding: Finding): Noted {
  const { weight, text, cite } = finding;
  const would = remediesText(finding);
  return {
    mark: { widthPt: MARK_WIDTH, draw: (x, y) => drawWeightMark(book.pen, weight, x, y) },
    word: WEIGHT_WORDS[weight],
    wordStyle: painted(TYPE.strong, WEIGHT_PAINTS[weight]),
    text: [
      { words: text, style: TYPE.body },
      ...(would === undefined ? [] : [{ words: would, style: TYPE.cell }]),
      { words: `Source: ${citeText(cite)}.`, style: TYPE.small },
    ],
  };
}
