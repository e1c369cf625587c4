import { type English, englishOf, type Job } from "../../job/index.ts";

/**
 * In whose English a job is read here, on the screen and on the paper that is made from it: where no place is set, it is
 * that of the browser’s language.
 */
export function englishHere(
  job: Pick<Job, "units" | "place">,
  language: string | undefined = globalThis.navigator?.language,
): English {
  if (job.place !== undefined || language !== "en-US") return englishOf(job);
  return englishOf({ ...job, place: "us" });
}
