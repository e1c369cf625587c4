import type { Working } from "../figures/index.ts";

/** One figure of an answer, with how it comes about where it is one of the plan. */
export interface AnswerFigure {
  label: string;
  text: string;
  working?: Working;
}
