import type { Job } from "../../job/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { clearPatch, setPatch, valueAt } from "./pointer.ts";
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
