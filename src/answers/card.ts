import type { Cite } from "../sources/index.ts";
import type { AnswerFigure } from "./answer-figure.ts";
import type { AskedShade } from "./facts.ts";
import type { TypedNumber } from "./typed-shade.ts";

/** What a question comes to for one shade. */
export interface CardAnswer {
  /** In one or two sentences. */
  text: string;
  figures: AnswerFigure[];
  /** Why it is so. */
  reason: string;
  cite: Cite;
}

/** A question that people ask, as it is written down once. */
export interface QuestionCard {
  id: string;
  question: string;
  /** Other words in which it is asked, to be found by. */
  also: string;
  /** The numbers that decide it. */
  asks: readonly TypedNumber[];
  answer: (facts: AskedShade) => CardAnswer;
}
