import fc from "fast-check";
import { type Job, openJob } from "../../src/job/index.ts";
import { changesBetween, rebase } from "../../src/workroom/merge/index.ts";
import { anyJob } from "../any-job.ts";
import { anyJob as plannedJob } from "../arbitrary-job.ts";

/** Any job of the test generators, under one id, as it is when it was opened. */
export const openedJob: fc.Arbitrary<Job> = fc
  .oneof({ weight: 3, arbitrary: anyJob() }, { weight: 1, arbitrary: plannedJob })
  .map((document) => {
    const opened = openJob(JSON.parse(JSON.stringify({ ...document, id: "one-job" })));
    if (!opened.ok) throw new Error(`invalid drawn job: ${JSON.stringify(opened.issues)}`);
    return opened.job;
  });

/** A choice for each of many changes: the first, the second and so on are made or not. */
export const choices = fc.array(fc.boolean(), { minLength: 1, maxLength: 40 });

/** What someone made of a job who took some of the fields of another. */
export function editedTowards(base: Job, other: Job, chosen: readonly boolean[]): Job {
  const some = changesBetween(base, other).filter((_, at) => chosen[at % chosen.length]);
  const edited = rebase(base, { changes: some }, []);
  // Some of the changes alone may leave a job that does not open: then all of them.
  return edited.ok ? edited.job : other;
}
