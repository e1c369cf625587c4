import { expose } from "comlink";
import type { Job } from "../../job/index.ts";
import {
  buyAsCut,
  type CuttingPlan,
  CuttingSearch,
  cuttingSavings,
  FIRST_TRIES,
  type KnownCloth,
  type Plan,
  plan,
  type Saving,
} from "../../plan/index.ts";
import { withLife } from "../workers/worker-life.ts";

/** The best plan so far, and what the job costs by it. */
export interface CuttingProgress {
  cutting: CuttingPlan;
  cost: Plan["cost"];
  tries: number;
  /** Why the search is at its end, where it is; `first`: nobody asked for more than a first plan. */
  ended?: "first" | "done" | "stopped" | "spent";
}

/** Tries between two looks at whether to stop. */
const PORTION = 200;
/** Beyond so many tries a better plan is rare. */
const MOST_TRIES = 40_000;
/** A plan that is no better is reported at least this seldom, in portions. */
const QUIET_PORTIONS = 10;

let stopped = false;

const service = {
  /** A plan at once, and better ones until there is no more to do or it is stopped; without `look` only the first; begun with what is known. */
  async search(
    job: Job,
    look: boolean,
    known: readonly KnownCloth[],
    tell: (progress: CuttingProgress) => void | Promise<void>,
  ): Promise<void> {
    stopped = false;
    const planned = plan(job);
    const search = new CuttingSearch(job, planned, known);
    search.improve(FIRST_TRIES);
    // The end of a search and its last plan come by two ways: it ends only once the plan has arrived.
    const report = async (ended?: CuttingProgress["ended"]) => {
      const cutting = search.plan(ended === "stopped" ? "stopped" : "feasible");
      const { cost } = buyAsCut(job, planned, cutting);
      await tell({ cutting, cost, tries: search.tries, ...(ended === undefined ? {} : { ended }) });
    };
    if (search.done) return report("done");
    await report(look ? undefined : "first");
    for (let n = 1; look && search.tries < MOST_TRIES; n++) {
      const more = search.improve(PORTION);
      await nextTurn();
      if (stopped) return report("stopped");
      if (!more) return report("done");
      if (n % QUIET_PORTIONS === 0) await report();
    }
    if (look) await report("spent");
  },

  stop(): void {
    stopped = true;
  },

  /** What would save cloth, one after the other as it is found. */
  async savings(
    job: Job,
    known: CuttingPlan | undefined,
    tell: (saving: Saving) => void | Promise<void>,
  ): Promise<void> {
    for (const saving of cuttingSavings(job, FIRST_TRIES, known)) {
      if (saving) await tell(saving);
      await nextTurn();
    }
  },
};

/** Lets messages in: a stop can only be heard when the thread is free for a moment. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

export type CuttingService = typeof service;

expose(withLife(service));
