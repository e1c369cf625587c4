import { CHAPTER_NAMES, type Chapter, type Step } from "../../shade-plan/index.ts";
import { type ChapterHead, openChapter } from "../heading.ts";
import type { ShadeContext } from "../shade-context.ts";
import { type NumberedStep, stepList } from "../step-list.ts";

/** How far the shade is raised in the drawing of a chapter: what its steps are about. */
const RAISE: Partial<Record<Chapter, number>> = { train: 1 };

/** The steps of some chapters, numbered through the whole workbook, each drawing beside its first step. */
export function stepChapters(context: ShadeContext, chapters: readonly Chapter[]): void {
  const { book } = context;
  for (const chapter of chapters) {
    const steps = numbered(context, chapter);
    if (steps.length === 0) continue;
    stepList(book, CHAPTER_NAMES[chapter], steps);
  }
}

function numbered({ shade, sheet }: ShadeContext, chapter: Chapter): NumberedStep[] {
  const shown = new Set<string>();
  return shade.steps.flatMap((step: Step, i): NumberedStep[] => {
    if (step.chapter !== chapter) return [];
    const { sheet: kind } = step;
    const first = kind !== undefined && !shown.has(kind);
    if (kind !== undefined) shown.add(kind);
    return [{ number: i + 1, step, ...(first ? { drawing: sheet(kind, RAISE[chapter] ?? 0) } : {}) }];
  });
}

export function stepsPage(context: ShadeContext, head: ChapterHead): void {
  openChapter(context.book, {
    ...head,
    lead: "Tick each box when it is done. Numbers in the text are this shade’s own.",
  });
  stepChapters(context, ["measure", "cut", "make", "board", "string"]);
}
