import { useEffect, useState } from "react";
import type { Remedy } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import type { FindingCard } from "../../plan/index.ts";
import { whenIdle } from "../frame/when-idle.ts";
import { useJob } from "../state/fields.ts";
import { trialOf } from "../state/planning.ts";

interface Answers {
  /** The state of the job and the card that they answer. */
  job: Job;
  card: FindingCard;
  remedies: readonly Remedy[];
}

/**
 * What answers a whole card on all of its shades, found in an idle moment: it takes as long as several plans of them.
 * Until then that stands which was found before the last edit, `stale`: its patch is of another state of the job and
 * must not be applied. Nothing is looked for until `wanted`.
 */
export function useAnswers(
  card: FindingCard,
  wanted: boolean,
): { remedies: readonly Remedy[]; stale: boolean } {
  const job = useJob();
  const [answers, setAnswers] = useState<Answers>();
  useEffect(() => {
    if (!wanted) return;
    let cancel = () => {};
    let left = false;
    // What a field takes is known to the job's schema, which comes after the first screen.
    const find = async () => {
      const { isWithinFields } = await import("../state/job-door.ts");
      if (left) return;
      cancel = whenIdle(() =>
        setAnswers({ job, card, remedies: trialOf(job).answersTo(card, isWithinFields) }),
      );
    };
    void find();
    return () => {
      left = true;
      cancel();
    };
  }, [job, card, wanted]);
  const stale = answers?.job !== job || answers.card !== card;
  return { remedies: answers?.remedies ?? [], stale };
}
