import type { Drawing } from "../../drawing/index.ts";
import { CHAPTER_NAMES, CHAPTERS, type Step, type StepChapter } from "../../shade-plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { openPage } from "../typeset/heading.ts";
import { type NumberedStep, stepList } from "../typeset/step-list.ts";
import { cautionBand, childrenAndCords } from "./caution-band.ts";

/** How far the shade is raised in the drawing of a chapter: what its steps are about. */
const RAISE: Partial<Record<StepChapter, number>> = { train: 1 };

/** The steps numbered through the whole set, each drawing beside the first step that it is about. */
function stepChapters(context: ShadeContext): void {
  const { book, shade } = context;
  const drawn = new Set<string>();
  for (const chapter of CHAPTERS) {
    const cautions = new Set<string>();
    const steps = shade.steps.flatMap((step, i): NumberedStep[] =>
      step.chapter === chapter
        ? [{ number: i + 1, step: onceSaid(step, cautions), ...drawingOf(context, step, drawn) }]
        : [],
    );
    if (steps.length > 0) stepList(book, CHAPTER_NAMES[chapter], steps);
  }
}

function drawingOf(
  { sheet }: ShadeContext,
  { sheet: kind, chapter }: Step,
  drawn: Set<string>,
): { drawing?: Drawing } {
  if (kind === undefined) return {};
  const raise = RAISE[chapter] ?? 0;
  const key = `${kind} ${raise}`;
  if (drawn.has(key)) return {};
  drawn.add(key);
  return { drawing: sheet(kind, raise) };
}

/** A caution stands at the first step of its chapter that it belongs to: said at every step, it is no longer read. */
function onceSaid(step: Step, said: Set<string>): Step {
  const { caution, ...rest } = step;
  if (caution === undefined || !said.has(caution)) {
    if (caution !== undefined) said.add(caution);
    return step;
  }
  return rest;
}

export function stepsPage(context: ShadeContext): void {
  openPage(context.book, {
    title: "Step by step",
    lead: "Tick each box when it is done. Numbers in the text are this shade’s own.",
  });
  cautionBand(context.book, childrenAndCords(context.shade.cautions));
  stepChapters(context);
}
