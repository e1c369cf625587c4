import fc from "fast-check";
import { expect, test } from "vitest";
import { verifyCloth, verifyLengths } from "../../src/cutting/index.ts";
import { buyAsCut, plan, planCutting } from "../../src/plan/index.ts";
import { anyJob } from "../arbitrary-job.ts";

test("any job has a cutting plan that passes its check, or says why not; the same again for the same tries", () => {
  fc.assert(
    fc.property(anyJob, (job) => {
      const whole = plan(job);
      const cutting = planCutting(job, whole, 60);
      for (const { problem, answer } of cutting.cloths) {
        expect(answer.status).not.toBe("withheld");
        if ("bolts" in answer) expect(verifyCloth(problem, answer)).toEqual([]);
      }
      for (const { problem, answer } of cutting.lengths) expect(verifyLengths(problem, answer)).toEqual([]);
      const text = JSON.stringify(cutting);
      expect(text).not.toMatch(/NaN|:null/);
      expect(JSON.stringify(planCutting(job, whole, 60))).toBe(text);
      const { cost } = buyAsCut(job, whole, cutting);
      expect(Number.isFinite(cost.total)).toBe(true);
    }),
    { numRuns: 15 },
  );
});
