import MiniSearch from "minisearch";
import type { CardAnswer, QuestionCard } from "./card.ts";
import { BOARD_CARDS } from "./cards/board-cards.ts";
import { CLOTH_CARDS } from "./cards/cloth-cards.ts";
import { CORD_CARDS } from "./cards/cord-cards.ts";
import { FOLD_CARDS } from "./cards/fold-cards.ts";
import { LOCK_CARDS } from "./cards/lock-cards.ts";
import { SAFETY_CARDS } from "./cards/safety-cards.ts";
import { SYMPTOM_CARDS } from "./cards/symptom-cards.ts";
import type { AskedShade } from "./facts.ts";

/** All questions that have an answer, in the order in which a shade is made. */
export const QUESTIONS: readonly QuestionCard[] = [
  ...CLOTH_CARDS,
  ...FOLD_CARDS,
  ...CORD_CARDS,
  ...LOCK_CARDS,
  ...BOARD_CARDS,
  ...SAFETY_CARDS,
  ...SYMPTOM_CARDS,
];

/** Words that stand in nearly every question and tell none from another. */
const EMPTY = new Set(
  "a an and are as at be by can could do does for from has have how i if in is it its me my of on one or should so some that the there this to up use was what when where which who why will with would you your".split(
    " ",
  ),
);

/** The stem of a word, as far as it must be: `rings` and `ring`, `slipping` and `slip`, `frayed` and `fray`. */
function stem(word: string): string | null {
  const plain = word.toLowerCase().replace(/[’']s?$/, "");
  if (EMPTY.has(plain) || plain === "") return null;
  const cut = plain.replace(/(?:ies)$/, "y").replace(/(?<=...)(?:ing|ed|es|s)$/, "");
  return cut.replace(/([b-df-hj-km-np-rtv-z])\1$/, "$1");
}

let index: MiniSearch<{ id: string; question: string; also: string }> | undefined;

function indexed() {
  if (index !== undefined) return index;
  index = new MiniSearch({
    fields: ["question", "also"],
    processTerm: stem,
    searchOptions: {
      boost: { question: 3 },
      prefix: (term) => term.length > 3,
      fuzzy: (term) => (term.length > 4 ? 0.2 : 0),
    },
  });
  index.addAll(QUESTIONS.map(({ id, question, also }) => ({ id, question, also })));
  return index;
}

/** The questions that words of one’s own come nearest to, the nearest first; none where none has any of them. */
export function findQuestions(words: string): QuestionCard[] {
  return indexed()
    .search(words)
    .flatMap(({ id }) => QUESTIONS.find((card) => card.id === id) ?? []);
}

/** @throws on a question that there is not */
export function answerTo(id: string, facts: AskedShade): CardAnswer {
  const card = QUESTIONS.find((one) => one.id === id);
  if (card === undefined) throw new Error(`invalid question: ${id}`);
  return card.answer(facts);
}
