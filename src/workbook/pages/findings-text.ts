import type { Finding } from "../../account/index.ts";
import { citeText } from "../../sources/index.ts";
import type { Book } from "../book.ts";
import type { Noted } from "../noted-list.ts";
import { painted, TYPE } from "../type-scale.ts";
import { drawWeightMark, MARK_WIDTH, WEIGHT_PAINTS, WEIGHT_WORDS } from "../weight-mark.ts";

/** A finding as an entry of a list: mark and word, the sentence, what would do, where it comes from. */
export function findingEntry(book: Book, finding: Finding, full: boolean): Noted {
  const { weight, text, remedies, cite } = finding;
  const would = remedies.map(({ label }) => label).join("; or ");
  return {
    mark: { widthPt: MARK_WIDTH, draw: (x, y) => drawWeightMark(book.pen, weight, x, y) },
    word: WEIGHT_WORDS[weight],
    wordStyle: painted(TYPE.strong, WEIGHT_PAINTS[weight]),
    text: [
      { words: text, style: full ? TYPE.body : TYPE.cell },
      ...(would === "" ? [] : [{ words: `What would do: ${would}.`, style: full ? TYPE.cell : TYPE.small }]),
      ...(full ? [{ words: `Source: ${citeText(cite)}.`, style: TYPE.small }] : []),
    ],
  };
}
