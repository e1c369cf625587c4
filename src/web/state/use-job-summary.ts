import { useEffect, useMemo, useRef, useState } from "react";
import type { Job } from "../../job/index.ts";
import type { PlanningService } from "../workbook/planning-worker.ts";
import { planningHangsMs, windowCount } from "../workers/hangs.ts";
import type { KeptWorker } from "../workers/kept-worker.ts";
import { planningWorker } from "../workers/planning.ts";
import { afterPaint } from "./after-paint.ts";
import { useJob } from "./fields.ts";
import { type JobSummary, summaryOf } from "./job-summary.ts";
import { planOf } from "./planning.ts";
import { heardSummary } from "./summary-news.ts";

/** More windows than this are planned off the page's thread; the last summary stays meanwhile. */
const MOST_AT_ONCE = 60;

/** Findings and cost of the whole job; `stale` while those of the last edit are on the way. */
export function useJobSummary(): { summary: JobSummary | undefined; stale: boolean } {
  const job = useJob();
  const large = windowCount(job) > MOST_AT_ONCE;
  const now = useMemo(() => (large ? undefined : summaryOf(planOf(job))), [job, large]);
  const [late, setLate] = useState<{ job: Job; summary: JobSummary }>();
  const worker = useRef<KeptWorker<PlanningService> | undefined>(undefined);
  const heard = useRef<{ id: string; summary: JobSummary } | undefined>(undefined);
  const running = useRef(false);
  const newest = useRef(job);
  newest.current = job;

  // biome-ignore lint/correctness/useExhaustiveDependencies: each state of the job asks for its summary
  useEffect(() => {
    if (!large || running.current) return;
    worker.current ??= planningWorker();
    const planning = worker.current;
    const next = async () => {
      const asked = newest.current;
      const known = heard.current?.id;
      const news = await planning.ask((service) => service.summary(asked, known), planningHangsMs(asked));
      const summary = heardSummary(heard.current?.summary, news);
      heard.current = { id: news.id, summary };
      setLate({ job: asked, summary });
      if (newest.current !== asked) await next();
    };
    running.current = true;
    // To hand a large job to another thread takes as long as a keystroke may: the drawing of the edit goes before it.
    void new Promise<void>(afterPaint)
      .then(next)
      // The last summary stays, and says that it is of an earlier state; the next edit asks again.
      .catch(() => {})
      .finally(() => {
        running.current = false;
      });
  }, [large, job]);
  useEffect(() => () => worker.current?.end(), []);

  if (now) return { summary: now, stale: false };
  return { summary: late?.summary, stale: late?.job !== job };
}
