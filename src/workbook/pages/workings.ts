import type { Working } from "../../figures/index.ts";
import { type ChapterHead, openChapter, section } from "../heading.ts";
import { notedList } from "../noted-list.ts";
import type { ShadeContext } from "../shade-context.ts";
import { workingEntries } from "./working-text.ts";

const GROUP_NAMES: Record<string, string> = {
  measure: "Measure",
  fold: "Folds",
  shape: "Shape",
  cloth: "Cloth",
  mass: "Weight",
  lift: "Lift",
  rig: "Cords",
  board: "Board",
  safety: "Safety",
  cost: "Cost",
};

/** Stages in the order in which they were computed. */
function grouped(workings: readonly Working[]): Map<string, Working[]> {
  const groups = new Map<string, Working[]>();
  for (const working of workings) {
    const stage = working.id.split(".")[0] ?? working.id;
    groups.set(stage, [...(groups.get(stage) ?? []), working]);
  }
  return groups;
}

/** Every number with its formula, what went in, and where the formula comes from. */
export function workingsPage(context: ShadeContext, head: ChapterHead): void {
  const { book, plan, shade } = context;
  openChapter(book, {
    ...head,
    lead: "Where every number comes from. Formulas hold in millimetres, newtons, grams and kilograms.",
  });
  for (const [stage, workings] of grouped(shade.workings)) {
    const name = GROUP_NAMES[stage] ?? stage.charAt(0).toUpperCase() + stage.slice(1);
    section(book, name, 80);
    notedList(book, workingEntries(plan, workings, true));
  }
}
