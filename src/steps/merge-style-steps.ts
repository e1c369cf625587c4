import { CHAPTERS, type Step, type StyleStep } from "../shade-plan/index.ts";

/** The usual steps with those of the style among them, each where it says; at the end of its chapter otherwise. */
export function mergeStyleSteps(usual: readonly Step[], own: readonly StyleStep[]): Step[] {
  const replaced = new Set(own.flatMap(({ replaces }) => replaces ?? []));
  // A step that another takes the place of still marks where that one goes.
  const merged: Step[] = [...usual];
  for (const { after, before, replaces, ...step } of own) {
    const anchor = before ?? after ?? replaces?.[0];
    const found = anchor === undefined ? -1 : merged.findIndex(({ id }) => id === anchor);
    const at = found >= 0 ? found + (before === undefined ? 1 : 0) : endOfChapter(merged, step);
    merged.splice(at, 0, step);
  }
  // One that takes another’s place may carry on its id, so that ticks stay.
  const ofUsual = new Set(usual);
  return merged.filter((step) => !ofUsual.has(step) || !replaced.has(step.id));
}

function endOfChapter(steps: readonly Step[], { chapter }: Step): number {
  const order = CHAPTERS.indexOf(chapter);
  const later = steps.findIndex((step) => CHAPTERS.indexOf(step.chapter) > order);
  return later < 0 ? steps.length : later;
}
