import { groupedBy, type Working } from "../../figures/index.ts";
import type { Plan, ShadePlan } from "../../plan/index.ts";
import type { ShadeContext } from "../shade-context.ts";
import type { Book } from "../typeset/book.ts";
import { openPage } from "../typeset/heading.ts";
import { notedGroups } from "../typeset/noted-list.ts";
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
  return groupedBy(workings, ({ id }) => id.split(".")[0] ?? id);
}

/** Every number with its formula, what went in, and where the formula comes from. */
export function workingsPage(context: ShadeContext): void {
  const { book, plan, shade } = context;
  openPage(book, {
    title: "Workings",
    lead: "Where every number comes from. Formulas hold in millimetres, newtons, grams and kilograms.",
  });
  notedGroups(
    book,
    [...grouped(shade.workings)].map(([stage, workings]) => ({
      heading: GROUP_NAMES[stage] ?? stage.charAt(0).toUpperCase() + stage.slice(1),
      entries: workingEntries(plan, workings),
    })),
  );
}

/**
 * What rooms share, and what the whole job comes to. Of a job of one shade that has its own sums already, only those that
 * are others.
 */
export function jobWorkings(plan: Plan, shades: readonly ShadePlan[]): Working[] {
  const own = plan.shades.length === 1 ? (shades[0]?.workings ?? []) : [];
  const shown = new Set(shades.map(({ roomId }) => roomId));
  return [
    ...plan.rooms.filter(({ roomId }) => shown.has(roomId)).flatMap(({ workings }) => workings),
    ...plan.workings.filter(({ id, value }) => !own.some((one) => one.id === id && one.value === value)),
  ];
}

export function jobWorkingsPage(book: Book, plan: Plan, workings: readonly Working[]): void {
  openPage(book, { title: "Workings of the whole job", lead: "How the sums came about." });
  notedGroups(book, [{ entries: workingEntries(plan, workings) }]);
}
