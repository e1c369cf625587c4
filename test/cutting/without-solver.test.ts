import { expect, test } from "vitest";
import { LengthsSearch } from "../../src/cutting/index.ts";
import { arcFlow } from "../../src/cutting/lengths/arc-flow.ts";
import { plan, planCutting } from "../../src/plan/index.ts";
import { workroomJob } from "./workroom-jobs.ts";

/** Invented jobs of one to six windows; larger flows than that the command line does not give its solver either. */
const JOBS = 60;
const MOST_ARCS = 10_000;

/**
 * The planner does without the exact solver of the command line (docs/method.md). That holds while the search of a
 * house's lengths ends with none open, or with so few that nobody would miss it.
 */
test("the lengths of a house are settled without an exact solver", () => {
  const open: string[] = [];
  let count = 0;
  for (let seed = 1; seed <= JOBS; seed++) {
    const job = workroomJob(seed);
    for (const { name, problem } of planCutting(job, plan(job), 0).lengths) {
      const search = new LengthsSearch(problem);
      while (search.step());
      count++;
      const isOpen = !search.isSettled && arcFlow(search.whole, MOST_ARCS) !== undefined;
      if (isOpen) open.push(`${seed}: ${name}`);
    }
  }
  expect(count).toBeGreaterThan(150);
  expect(open).toEqual([]);
});
