import { type Drawing, drawAction } from "../../drawing/index.ts";
import { CHAPTER_NAMES, CHAPTERS, type Step } from "../../shade-plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import { openPage } from "../typeset/heading.ts";
import { type NumberedStep, type StepChapterList, stepChapters } from "../typeset/step-list.ts";
import { cautionBand, childrenAndCords } from "./caution-band.ts";

/** The steps numbered through the whole set, each with what the hands do under it. */
function chaptersOf({ plan, shade }: ShadeContext): StepChapterList[] {
  return CHAPTERS.flatMap((chapter): StepChapterList[] => {
    const cautions = new Set<string>();
    const steps = shade.steps.flatMap((step, i): NumberedStep[] =>
      step.chapter === chapter
        ? [{ number: i + 1, step: onceSaid(step, cautions), ...drawingOf(step, plan.units) }]
        : [],
    );
    return steps.length === 0 ? [] : [{ heading: CHAPTER_NAMES[chapter], steps }];
  });
}

function drawingOf({ action }: Step, units: UnitChoice): { drawing?: Drawing } {
  return action === undefined ? {} : { drawing: drawAction(action, units) };
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
  stepChapters(context.book, chaptersOf(context));
}
