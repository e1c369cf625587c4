import type { Job } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { type AskedShade, shadeFacts } from "../facts.ts";
import { rowsAndFolds, yardage } from "./cloth-lessons.ts";
import { childSafety, loads } from "./cord-lessons.ts";
import { LESSONS, type Lesson, type LessonId, type LessonMaker } from "./lesson.ts";
import { seat, threading, whichLock } from "./lock-lessons.ts";

export { LESSONS, type Lesson, type LessonId, type LessonPoint, type LessonView } from "./lesson.ts";

const MAKERS: Record<LessonId, LessonMaker> = {
  "rows-and-folds": rowsAndFolds,
  yardage,
  "which-lock": whichLock,
  seat,
  threading,
  loads,
  "child-safety": childSafety,
};

/** On every page that may leave the house and is about cords. */
const CAUTIONS: Partial<Record<LessonId, readonly string[]>> = {
  yardage: [],
};

/** The lessons that one shade gives, in the order in which it is made. */
export function lessonsOf(facts: AskedShade): Lesson[] {
  return LESSONS.flatMap((id) => {
    const made = MAKERS[id](facts);
    if (made === undefined) return [];
    const named = CAUTIONS[id] ?? ["children-and-cords"];
    return [{ ...made, id, cautions: made.shade.cautions.filter((caution) => named.includes(caution.id)) }];
  });
}

/** The lessons of any shade of a job, for who has its plan already. */
export function jobLessons(job: Job): (shade: ShadePlan) => Lesson[] {
  return (shade) => {
    const room = job.rooms.findIndex(({ windows }) => windows.some(({ id }) => id === shade.shadeId));
    const window = job.rooms[room]?.windows.findIndex(({ id }) => id === shade.shadeId) ?? -1;
    const facts = shadeFacts(job, room, window, shade);
    return facts === undefined ? [] : lessonsOf(facts);
  };
}
