import { type ClothProblem, ClothSearch } from "../src/cutting/index.ts";
import { plan, planCutting } from "../src/plan/index.ts";
import { workroomJob } from "../test/cutting/workroom-jobs.ts";
import type { Figure } from "./figure.ts";

const JOBS = 80;
const MOST_PIECES = 20;
/** What a cloth may take, ms; with `--long` what a maker waits for. */
const QUICK_MS = 1000;
const LONG_MS = 10_000;

/** Cloths of up to 20 pieces of invented workroom jobs. */
function cloths(): ClothProblem[] {
  return Array.from({ length: JOBS }, (_, seed) => workroomJob(seed + 1)).flatMap((job) =>
    planCutting(job, plan(job), 0)
      .cloths.map(({ problem }) => problem)
      .filter(({ pieces }) => pieces.length <= MOST_PIECES),
  );
}

function isProved(problem: ClothProblem, ms: number): boolean {
  const begun = performance.now();
  const search = new ClothSearch(problem);
  while (performance.now() - begun < ms && search.improve(64));
  const { status } = search.answer();
  return status === "optimal" || status === "infeasible";
}

/** Share of small cloths for which it is proved that no plan takes less. */
export function cutProved(long: boolean): Figure {
  const all = cloths();
  const proved = all.filter((problem) => isProved(problem, long ? LONG_MS : QUICK_MS)).length;
  return { name: "cut.proved", value: (100 * proved) / all.length, unit: "%", goal: 90, better: "higher" };
}
