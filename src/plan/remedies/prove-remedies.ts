import type { Finding } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import type { Plan, ShadePlan } from "../plan-types.ts";
import { RemedyTrial } from "./remedy-trial.ts";
import { isWithinFields } from "./within-fields.ts";

/**
 * A plan of the job with those remedies alone that cure and that the fields of the job take: each is planned as if it
 * were pressed.
 * That takes as long as several plans, so `plan` leaves it to who offers them.
 */
export function proveRemedies(job: Job, plan: Plan): Plan {
  const shades = new Map(plan.shades.map((shade) => [shade.shadeId, shade]));
  const shadeAt = (room: number, window: number): ShadePlan | undefined =>
    shades.get(job.rooms[room]?.windows[window]?.id ?? "");
  const trial = new RemedyTrial(job, shadeAt);
  const proven = (findings: readonly Finding[]): Finding[] =>
    findings.map((finding) => ({
      ...finding,
      remedies: finding.remedies.flatMap(
        (remedy) => (isWithinFields(remedy) && trial.proven(finding, remedy)) || [],
      ),
    }));
  return {
    ...plan,
    findings: proven(plan.findings),
    shades: plan.shades.map((shade) => ({ ...shade, findings: proven(shade.findings) })),
  };
}
