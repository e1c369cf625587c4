import "../no-code-from-text.ts";
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
/** Beyond so many tries a better plan is rare, but in so much time many a cloth of a house is proved, ms. */
const MOST_TRIES = 40_000;
const LEAST_MS = 10_000;
/** Between two reports, ms. */
const QUIET_MS = 400;

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
    const endMs = performance.now() + LEAST_MS;
    const isSpent = () => search.tries >= MOST_TRIES && performance.now() >= endMs;
    let toldMs = performance.now();
    while (look && !isSpent()) {
      const more = search.improve(PORTION);
      await nextTurn();
      if (stopped) return report("stopped");
      if (!more) return report("done");
      if (performance.now() - toldMs < QUIET_MS) continue;
      await report();
      toldMs = performance.now();
    }
    if (look) await report("spent");
  },

  stop(): void {
    stopped = true;
  },

  /** What would save cloth, one after the other as it is found; a way that saves nothing is told as nothing. */
  async savings(
    job: Job,
    known: CuttingPlan | undefined,
    tell: (saving?: Saving) => void | Promise<void>,
  ): Promise<void> {
    for (const saving of cuttingSavings(job, FIRST_TRIES, known)) {
      await tell(saving);
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
