import { isGrave } from "../../figures/index.ts";
import { RULE_OUTCOME_NAMES, RULE_OUTCOMES, STATUS_NAMES } from "../../shade-plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { counted } from "../../words/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { columnBlocks } from "../typeset/column-blocks.ts";
import { openPage, section } from "../typeset/heading.ts";
import { firstEntryHeight, notedList } from "../typeset/noted-list.ts";
import { drawOutcomeMark, OUTCOME_MEANINGS, OUTCOME_PAINTS } from "../typeset/outcome-mark.ts";
import { columns } from "../typeset/paper.ts";
import { paragraph, setLines } from "../typeset/paragraph.ts";
import { MARK_WIDTH } from "../typeset/severity-mark.ts";
import { testList } from "../typeset/test-list.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";
import { causesInShort } from "./cards-text.ts";
import { resultTables } from "./safety-results.ts";
import { worstStates } from "./safety-states.ts";
import { fullSourceText } from "./safety-words.ts";
import { capital, sentence } from "./sentence.ts";

/** The cords of this shade held against the rules of its place and purpose, and what only hands can test. */
export function childSafetyPage(context: ShadeContext): void {
  const { book, shade } = context;
  const { safety } = shade;
  openPage(book, {
    title: "Child safety",
    lead: "Every cord at every height, against the rules that were read. For the maker: these pages do not go out with the shade.",
  });
  paragraph(book, safety.line, { style: TYPE.strong });
  whatToDo(context);
  paragraph(book, safety.readAs);
  paragraph(book, NO_PROOF, { after: 14 });
  outcomes(context);
  resultTables(context);
  worstStates(context);
  physicalTests(context);
  listedRules(context);
  cautions(context);
}

const NO_PROOF = "A plan can show that a rule fails; that none fails it cannot show.";

/** Each cause for which rules fail, with what would answer all of them: rules and figures come after. */
function whatToDo({ book, plan, shade }: ShadeContext): void {
  const failed = shade.findings.filter((one) => one.stage === "safety" && isGrave(one));
  const entries = causesInShort(book, plan, failed);
  if (entries.length > 0) notedList(book, entries);
}

/** The four outcomes side by side: mark, count, word, and what it means. */
function outcomes({ book, shade }: ShadeContext): void {
  const { counts } = shade.safety;
  const word = TYPE.strong;
  const laid = RULE_OUTCOMES.map((outcome, i) => {
    const span = columns(book.paper, i * 3, 3);
    return { outcome, span, meaning: book.lines(OUTCOME_MEANINGS[outcome], span.width, TYPE.note) };
  });
  const lines = Math.max(...laid.map(({ meaning }) => meaning.length));
  const height = word.leadingPt + 2 + lines * TYPE.note.leadingPt;
  book.need(height);
  const top = book.y;
  for (const { outcome, span, meaning } of laid) {
    book.tags.artifact(() => drawOutcomeMark(book.pen, outcome, span.x, top + word.leadingPt / 2));
    const name = [`${counts[outcome]} ${RULE_OUTCOME_NAMES[outcome]}`];
    book.tags.mark("H4", () =>
      setLines(book, name, span.x + MARK_WIDTH, top, painted(word, OUTCOME_PAINTS[outcome])),
    );
    book.tags.mark("P", () => setLines(book, meaning, span.x, top + word.leadingPt + 2, TYPE.note));
  }
  book.y = top + height + 14;
}

function physicalTests({ book, shade }: ShadeContext): void {
  const { tests, results } = shade.safety;
  if (tests.length === 0) return;
  section(book, "Tests to do on the finished shade", 120);
  testList(
    book,
    tests.map(({ id, title, text }) => {
      const rules = results
        .filter((result) => result.test === id || result.alsoTests?.includes(id))
        .map(({ ruleId }) => ruleId);
      return { title, text, decides: decidesText(rules) };
    }),
  );
}

/** How many rules the test decides, and their codes in the table above. */
function decidesText(ruleIds: readonly string[]): string {
  if (ruleIds.length === 0) return "";
  return `Decides ${counted(ruleIds.length, "rule")} of the table: ${ruleIds.join(", ")}.`;
}

/** Rules that no longer hold, or that nobody confirmed: listed so that nobody leans on them. */
function listedRules({ book, shade }: ShadeContext): void {
  const { listed } = shade.safety;
  if (listed.length === 0) return;
  const entries = listed.map((rule) => ({
    word: capital(STATUS_NAMES[rule.status]),
    wordStyle: TYPE.cellStrong,
    text: [
      { words: `${rule.words} ${rule.ruleId}`, style: TYPE.cell },
      ...(rule.note === undefined ? [] : [{ words: sentence(rule.note), style: TYPE.cell }]),
      { words: fullSourceText(rule), style: TYPE.small },
    ],
  }));
  section(book, "Listed only, never a result", firstEntryHeight(book, entries));
  notedList(book, entries);
}

function cautions({ book, shade }: ShadeContext): void {
  section(book, "Cautions", 100);
  columnBlocks(
    book,
    shade.safety.cautions.map(({ title, text, cite }) => ({
      title,
      text,
      ...(cite === undefined ? {} : { small: `Source: ${citeText(cite)}.` }),
    })),
  );
}
