import type { Job } from "../job/index.ts";
import { JobPlanner, type PlanOptions } from "./job-planner.ts";
import type { Plan, ShadePlan } from "./plan-types.ts";

/**
 * Plans every shade of a job: the one entry for command line, planner and code.
 *
 * Pure, deterministic and total: any valid job gives a plan. What cannot be made, or not well, is in the
 * findings, never an exception. Whether what would answer a finding keeps to the fields of the job, and cures,
 * is for `proveRemedies` to try. Who plans the same job again and again while it is edited keeps a `JobPlanner`.
 */
export function plan(job: Job, options: PlanOptions = {}): Plan {
  return new JobPlanner(true).plan(job, options);
}

/** One window's part of `plan(job)` alone; undefined where there is no such window. */
export function planWindow(job: Job, roomIndex: number, windowIndex: number): ShadePlan | undefined {
  return new JobPlanner().shade(job, roomIndex, windowIndex);
}
