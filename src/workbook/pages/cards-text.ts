import { type Finding, SEVERITY_WORDS } from "../../figures/index.ts";
import { answersOf, type FindingCard, findingCards, type Plan } from "../../plan/index.ts";
import { citeInShort } from "../../sources/index.ts";
import { counted } from "../../words/index.ts";
import type { Book } from "../typeset/book.ts";
import type { Noted } from "../typeset/noted-list.ts";
import { drawSeverityMark, MARK_WIDTH, SEVERITY_PAINTS } from "../typeset/severity-mark.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";
import { findingEntry, remediesText } from "./findings-text.ts";

/** Findings as entries, one for each cause: the answer and what would do first, then each rule behind it. */
export function cardEntries(book: Book, plan: Plan, findings: readonly Finding[]): Noted[] {
  return findingCards(findings).flatMap((card) =>
    isCause(card)
      ? [causeEntry(book, plan, card)]
      : card.findings.map((finding) => findingEntry(book, finding)),
  );
}

/** Causes in one line each, with what would do; how many rules fail for them comes after. */
export function causesInShort(book: Book, plan: Plan, findings: readonly Finding[]): Noted[] {
  return findingCards(findings).map((card) => ({
    ...markOf(book, card),
    text: [
      { words: saysOf(card), style: TYPE.strong },
      ...wouldText(plan, card, "What would do"),
      ...(isCause(card)
        ? [{ words: `${counted(card.findings.length, "reason")}, in the tables below.`, style: TYPE.small }]
        : []),
    ],
  }));
}

/** Causes that several shades have, each with its names and what would do for all of them. */
export function sharedCauseEntries(book: Book, plan: Plan): Noted[] {
  const names = new Map(plan.shades.map(({ shadeId, windowName }) => [shadeId, windowName]));
  return findingCards(plan.shades.flatMap(({ findings }) => findings))
    .filter(({ shadeIds, severity }) => shadeIds.length > 1 && severity !== "note")
    .map((card) => {
      const where = card.shadeIds.map((id) => names.get(id) ?? id);
      return {
        ...markOf(book, card),
        text: [
          { words: saysOf(card), style: TYPE.body },
          { words: `${where.length} shades: ${namedText(where)}.`, style: TYPE.cell },
          ...wouldText(plan, card, `What would do for all ${where.length}`),
        ],
      };
    });
}

function causeEntry(book: Book, plan: Plan, card: FindingCard): Noted {
  return {
    ...markOf(book, card),
    text: [
      { words: saysOf(card), style: TYPE.strong },
      ...wouldText(plan, card, "What would do"),
      ...card.findings.flatMap(({ text, cite }) => [
        { words: text, style: TYPE.cell },
        // What to beware of in a source stands on the page of the review.
        { words: `Source: ${citeInShort(cite)}.`, style: TYPE.small },
      ]),
    ],
  };
}

function isCause({ findings }: FindingCard): boolean {
  return findings.some(({ cause }) => cause !== undefined);
}

/** Where one id alone makes the card, its first sentence is true of every shade, and the numbers behind it are not. */
function saysOf({ says, findings: [first] }: FindingCard): string {
  return first?.cause === undefined ? (/^.+?[.!?](?= |$)/u.exec(says)?.[0] ?? says) : says;
}

function markOf(book: Book, { severity }: FindingCard): Pick<Noted, "mark" | "word" | "wordStyle"> {
  return {
    mark: { widthPt: MARK_WIDTH, draw: (x, y) => drawSeverityMark(book.pen, severity, x, y) },
    word: SEVERITY_WORDS[severity],
    wordStyle: painted(TYPE.strong, SEVERITY_PAINTS[severity]),
  };
}

function wouldText(plan: Plan, card: FindingCard, word: string) {
  const text = remediesText(answersOf(plan, card), word);
  return text === undefined ? [] : [{ words: text, style: TYPE.body }];
}

const MOST_NAMED = 12;

function namedText(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return [...names.slice(0, MOST_NAMED), ...(more > 0 ? [`${more} more`] : [])].join(", ");
}
