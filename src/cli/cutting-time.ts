import { type ShouldStop, solveWithHighs } from "../cutting/index.ts";
import type { Job } from "../job/index.ts";
import { type CuttingPlan, CuttingSearch, type KnownCloth, type Plan } from "../plan/index.ts";
import type { Io } from "./io.ts";
import { nextTurn } from "./next-turn.ts";

export interface CuttingLimits {
  /** From the planned job to the cutting plan in hand, s; a first plan is made even where there is no time. */
  seconds: number;
  tries?: number;
  /** How cloth was to be cut before cuts were made. */
  known?: readonly KnownCloth[];
}

/** Between two looks at the keyboard, and two words on the screen, ms. */
const SLICE_MS = 100;
const TOLD_EVERY_MS = 500;
/** Tries between two looks at how many there have been. */
const PORTION = 1000;
/** Of the time left so much is kept to lay out and check the plan, ms for each piece. */
const LAST_MS_PER_PIECE = 0.15;
/** An exact solver is slow to stop: it gets so much of the time left, and is not begun for less, s. */
const SOLVER_SHARE = 0.3;
const LEAST_SOLVER_S = 1;

/** The best cutting plan that is found before the time is up, the tries are spent, or the user stops. */
export async function cutWithin(
  job: Job,
  planned: Plan,
  { seconds, tries, known }: CuttingLimits,
  io: Io,
): Promise<CuttingPlan> {
  const endMs = performance.now() + 1000 * seconds;
  // Of a contract that takes a while, and there is nothing yet that could be taken: whoever stops it ends the program.
  const search = new CuttingSearch(job, planned, known);
  let isInterrupted = false;
  const listenNoMore = io.onInterrupt?.(() => {
    isInterrupted = true;
  });
  try {
    const lastMs = endMs - LAST_MS_PER_PIECE * search.pieces;
    const isOver = () => isInterrupted || performance.now() >= lastMs;
    await improve(search, tries, isOver, io);
    if (search.openLengths > 0 && !isInterrupted) await prove(search, lastMs, isOver);
    return search.plan(isInterrupted ? "stopped" : "feasible");
  } finally {
    io.progress?.("");
    listenNoMore?.();
  }
}

async function improve(
  search: CuttingSearch,
  tries = Number.POSITIVE_INFINITY,
  isOver: ShouldStop,
  io: Io,
): Promise<void> {
  let toldMs = performance.now();
  const begun = search.tries;
  for (let more = true; more && !isOver(); ) {
    const sliceMs = performance.now() + SLICE_MS;
    const left = tries - (search.tries - begun);
    if (left <= 0) return;
    more = search.improve(Math.min(PORTION, left), () => isOver() || performance.now() >= sliceMs);
    if (io.progress && performance.now() - toldMs >= TOLD_EVERY_MS) {
      toldMs = performance.now();
      io.progress(`${search.tries} plans tried; Ctrl-C takes the best so far`);
    }
    await nextTurn();
  }
}

async function prove(search: CuttingSearch, lastMs: number, isOver: ShouldStop): Promise<void> {
  const solverS = () => (SOLVER_SHARE * (lastMs - performance.now())) / 1000;
  const isLate = () => isOver() || solverS() < LEAST_SOLVER_S;
  if (isLate()) return;
  const { loadHighs } = await import("./load-highs.ts");
  search.proveLengths(solveWithHighs(await loadHighs(), solverS), isLate);
}
