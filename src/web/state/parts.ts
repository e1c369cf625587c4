import { CATALOGUE, DEFAULT_RATES, type Job, type PartsAtHand, partsOf } from "../../job/index.ts";
import { usePlanner } from "./store.ts";

const known = new WeakMap<Job["cloths"], { hardware: Job["hardware"]; parts: PartsAtHand }>();

/** Cloths and parts to choose from; gathered again only when cloths or hardware change. */
export function partsAtHand(job: Job): PartsAtHand {
  const before = known.get(job.cloths);
  if (before?.hardware === job.hardware) return before.parts;
  const parts = partsOf(job);
  known.set(job.cloths, { hardware: job.hardware, parts });
  return parts;
}

export function useParts(): PartsAtHand {
  return usePlanner((planner) => (planner.job ? partsAtHand(planner.job) : CATALOGUE));
}

export function useCurrency(): string {
  return usePlanner((planner) => planner.job?.rates.currency ?? DEFAULT_RATES.currency.value);
}
