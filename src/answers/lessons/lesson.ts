import type { ShadePlan } from "../../plan/index.ts";
import type { Caution, SheetKind } from "../../shade-plan/index.ts";
import type { Cite } from "../../sources/index.ts";
import type { AnswerFigure } from "../answer-figure.ts";
import type { AskedShade, LockedShade } from "../facts.ts";

/** What is taught, one page each, in the order in which a shade is made. */
export const LESSONS = [
  "rows-and-folds",
  "yardage",
  "which-lock",
  "seat",
  "threading",
  "loads",
  "child-safety",
] as const;
export type LessonId = (typeof LESSONS)[number];

/** A thing in a drawing, and what there is to say of it. */
export interface LessonPoint {
  /** As the drawing names it. */
  part: string;
  text: string;
}

/** A drawing of the shade, with a letter at each of its points. */
export interface LessonView {
  sheet: SheetKind;
  raise: number;
  points: LessonPoint[];
}

/** One lesson, made from one shade. */
export interface Lesson {
  id: LessonId;
  title: string;
  /** What it answers. */
  question: string;
  /** The shade that is drawn: over a cord lock where the lesson is about one. */
  shade: ShadePlan;
  views: LessonView[];
  figures: AnswerFigure[];
  reason: string;
  /** What can hurt, where something of it can. */
  cautions: Caution[];
  cite: Cite;
}

/** How a lesson is made; nothing where this shade has nothing to show of it. */
export type LessonMaker = (facts: AskedShade) => Omit<Lesson, "id" | "cautions"> | undefined;

/** Beside the question of a lesson about a lock where the shade has none. */
const AS_IF = "Drawn as if it hung over a cord lock: this shade is raised otherwise.";

/** A lesson about a lock; none where no lock can be planned. */
export function ofLocked(
  make: (facts: AskedShade, locked: LockedShade) => Omit<Lesson, "id" | "cautions" | "shade">,
): LessonMaker {
  return (facts) => {
    const locked = facts.locked();
    if (locked === undefined) return undefined;
    const made = make(facts, locked);
    const isOwn = facts.shade.lift.kind === "cord-lock";
    return { ...made, shade: locked, question: isOwn ? made.question : `${made.question} ${AS_IF}` };
  };
}
