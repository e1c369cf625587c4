import type { Plan, ShadePlan } from "../../plan/index.ts";

/** What the job knows of the lines that a tag leaves blank: which shade it is, and the month in which it is made. */
export function knownOfTag(
  plan: Pick<Plan, "jobName">,
  shade: ShadePlan,
  madeOn?: Date,
): Record<string, string> {
  const month = madeOn === undefined ? undefined : String(madeOn.getMonth() + 1).padStart(2, "0");
  return {
    model: `${shade.windowName}, ${plan.jobName}`,
    ...(madeOn === undefined ? {} : { made: `${madeOn.getFullYear()}-${month}` }),
  };
}
