import { wrap } from "comlink";
import { useEffect, useMemo, useRef, useState } from "react";
import type { Job } from "../../job/index.ts";
import type { PlanningService } from "../workbook/planning-worker.ts";
import { useJob } from "./fields.ts";
import { type JobSummary, summaryOf } from "./job-summary.ts";
import { planOf } from "./planning.ts";

/** More windows than this are planned off the page's thread; the last summary stays meanwhile. */
const MOST_AT_ONCE = 60;

export function windowCount(job: Job): number {
  return job.rooms.reduce((sum, room) => sum + room.windows.length, 0);
}

/** Findings and cost of the whole job; `stale` while those of the last edit are on the way. */
export function useJobSummary(): { summary: JobSummary | undefined; stale: boolean } {
  const job = useJob();
  const large = windowCount(job) > MOST_AT_ONCE;
  const now = useMemo(() => (large ? undefined : summaryOf(planOf(job))), [job, large]);
  const [late, setLate] = useState<{ job: Job; summary: JobSummary }>();
  const worker = useRef<Worker | undefined>(undefined);
  const running = useRef(false);
  const newest = useRef(job);
  newest.current = job;

  // biome-ignore lint/correctness/useExhaustiveDependencies: each state of the job asks for its summary
  useEffect(() => {
    if (!large || running.current) return;
    worker.current ??= new Worker(new URL("../workbook/planning-worker.ts", import.meta.url), {
      type: "module",
    });
    const service = wrap<PlanningService>(worker.current);
    const next = async () => {
      const asked = newest.current;
      const summary = await service.summary(asked);
      setLate({ job: asked, summary });
      if (newest.current !== asked) await next();
    };
    running.current = true;
    void next().finally(() => {
      running.current = false;
    });
  }, [large, job]);
  useEffect(() => () => worker.current?.terminate(), []);

  if (now) return { summary: now, stale: false };
  return { summary: late?.summary, stale: late?.job !== job };
}
