import type { Job } from "../../job/index.ts";
import type { PlanOptions } from "../job-planner.ts";
import { plan } from "../plan.ts";
import type { Plan } from "../plan-types.ts";
import { buyAsCut } from "./buy-as-cut.ts";
import type { CuttingPlan } from "./cutting-plan.ts";
import { FIRST_TRIES, planCutting } from "./cutting-search.ts";

/** Beyond so many windows a cutting plan is made only when it is asked for by itself. */
const MOST_WINDOWS = 300;

/** A job planned, cut, and bought for as it is cut. A very large job is planned alone. */
export function planAndCut(
  job: Job,
  options: PlanOptions = {},
  tries = FIRST_TRIES,
): { plan: Plan; cutting?: CuttingPlan } {
  const planned = plan(job, options);
  if (planned.shades.length > MOST_WINDOWS) return { plan: planned };
  const cutting = planCutting(job, planned, tries);
  return { plan: buyAsCut(job, planned, cutting), cutting };
}
