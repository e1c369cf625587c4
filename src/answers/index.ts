export type { AnswerFigure } from "./answer-figure.ts";
export type { CardAnswer, QuestionCard } from "./card.ts";
export { type AskedShade, shadeFacts } from "./facts.ts";
export { answerTo, findQuestions, QUESTIONS } from "./find-answers.ts";
export {
  jobLessons,
  LESSONS,
  type Lesson,
  type LessonId,
  type LessonView,
  lessonsOf,
} from "./lessons/index.ts";
export { type TypedJob, type TypedNumber, type TypedShade, typedJob, USUAL_SHADE } from "./typed-shade.ts";
