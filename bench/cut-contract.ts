import { verifyCloth } from "../src/cutting/index.ts";
import { CuttingSearch, plan } from "../src/plan/index.ts";
import { type Figure, timed } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const WINDOWS = 2000;
/** Time given to the search, s. */
const SEARCH_S = 15;

/** A contract of 2,000 windows, planned already: first plans, 15 s of search, and the plan laid out and checked twice. */
export function cutContract(): Figure {
  const job = jobOf(WINDOWS);
  const planned = plan(job);
  const ms = timed(() => {
    const endMs = performance.now() + 1000 * SEARCH_S;
    const search = new CuttingSearch(job, planned);
    search.improve(Number.POSITIVE_INFINITY, () => performance.now() >= endMs);
    for (const { problem, answer } of search.plan().cloths) {
      if (!("bolts" in answer)) throw new Error(`invalid answer: ${answer.status}`);
      const faults = verifyCloth(problem, answer);
      if (faults.length > 0) throw new Error(`invalid plan: ${faults[0]}`);
    }
  });
  return { name: "cut.contract.2000", value: ms / 1000, unit: "s", goal: 30, better: "lower" };
}
