import { clearPatch, setPatch, valueAt } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { edit, usePlanner } from "./store.ts";

const UNITS_WITHOUT_JOB: UnitChoice = { system: "imperial", ruler: "1/8 in" };

export function useJob(): Job {
  const job = usePlanner((planner) => planner.job);
  if (!job) throw new Error("invalid screen: no job is open");
  return job;
}

/** What the job holds at a pointer; the component is drawn again only when that changes. */
export function useField(pointer: string): unknown {
  return usePlanner((planner) => valueAt(planner.job, pointer));
}

export function useUnits(): UnitChoice {
  return usePlanner((planner) => planner.job?.units ?? UNITS_WITHOUT_JOB);
}

export function useCanEdit(): boolean {
  return usePlanner((planner) => planner.access === "mine");
}

/** Sets a field, or takes it away where the value is undefined. */
export function editField(pointer: string, value: unknown, label: string, joins?: string): void {
  const { job } = usePlanner.getState();
  if (!job || Object.is(valueAt(job, pointer), value)) return;
  const patch = value === undefined ? clearPatch(job, pointer) : setPatch(job, pointer, value);
  edit({ label, patch, ...(joins === undefined ? {} : { joins: `${pointer} ${joins}` }) });
}

/** Puts one more at the end of a list that the job may not hold yet. */
export function addToList(pointer: string, value: unknown, label: string): void {
  const { job } = usePlanner.getState();
  if (!job) return;
  const isThere = Array.isArray(valueAt(job, pointer));
  const patch = isThere
    ? [{ op: "add" as const, path: `${pointer}/-`, value }]
    : setPatch(job, pointer, [value]);
  edit({ label, patch });
}

/** Takes one away from an optional list; the list goes with its last. */
export function removeFromList(pointer: string, at: number, label: string): void {
  const list = valueAt(usePlanner.getState().job, pointer);
  if (!Array.isArray(list)) return;
  if (list.length === 1) editField(pointer, undefined, label);
  else edit({ label, patch: [{ op: "remove", path: `${pointer}/${at}` }] });
}
