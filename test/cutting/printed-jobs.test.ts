import fc from "fast-check";
import { expect, test } from "vitest";
import { verifyCloth } from "../../src/cutting/index.ts";
import { plan, planCutting } from "../../src/plan/index.ts";
import { EVERY_MEASURE, printedJob } from "./printed-jobs.ts";

/** Each panel lies on its cloth as the cloth's stage laid it, so that a way to cut all of them is always there. */
test.each(EVERY_MEASURE)(
  "a job in %s always has a cutting plan, however its sizes meet the repeat",
  (measure) => {
    fc.assert(
      fc.property(printedJob(measure), (job) => {
        for (const { problem, answer } of planCutting(job, plan(job), 30).cloths) {
          if (!("bolts" in answer)) throw new Error(JSON.stringify(answer));
          expect(verifyCloth(problem, answer)).toEqual([]);
        }
      }),
      { numRuns: 120, seed: 20_261_129 },
    );
  },
);
