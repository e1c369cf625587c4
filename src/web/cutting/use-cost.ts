import { useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";
import { useCuttingStore } from "./cutting-store.ts";

/** What the job costs: as the cutting plan lays the cloth, once there is one for the job as it stands. */
export function useCost(summary: JobSummary | undefined): JobSummary["cost"] | undefined {
  const job = useJob();
  const asCut = useCuttingStore((cutting) => (cutting.job === job ? cutting.progress?.cost : undefined));
  return asCut ?? summary?.cost;
}
