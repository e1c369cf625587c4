import type { Finding } from "../../figures/index.ts";
import type { Plan, RoomPlan } from "../../plan/index.ts";
import type { Cost } from "../../shade-plan/index.ts";

/** What the page of a job shows of its plan, small enough to be sent between threads. */
export interface JobSummary {
  jobId: string;
  /** Findings of the job and of its shades, the heaviest first within each. */
  findings: Finding[];
  rooms: RoomPlan[];
  cost: Cost;
}

export function summaryOf({ jobId, findings, shades, rooms, cost }: Plan): JobSummary {
  return { jobId, findings: [...findings, ...shades.flatMap((shade) => shade.findings)], rooms, cost };
}
