import { useEffect, useState } from "react";
import type { Remedy } from "../../figures/index.ts";
import type { Job } from "../../job/index.ts";
import type { FindingCard } from "../../plan/index.ts";
import { whenIdle } from "../frame/when-idle.ts";
import { useToldJob } from "../shade/shade-context.tsx";
import { useJob } from "../state/fields.ts";
import { isWithinFields } from "../state/job-door.ts";
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
  const told = useToldJob();
  const [answers, setAnswers] = useState<Answers>();
  useEffect(() => {
    if (!wanted) return;
    return whenIdle(() =>
      setAnswers({ job: told, card, remedies: trialOf(told).answersTo(card, isWithinFields) }),
    );
  }, [told, card, wanted]);
  const stale = answers?.job !== job || answers.card !== card;
  return { remedies: answers?.remedies ?? [], stale };
}
