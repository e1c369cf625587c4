import {
  type ClothSearching,
  LengthsSearch,
  NEVER,
  proveLengths,
  type ShouldStop,
  type SolveWhole,
  startClothSearch,
} from "../../cutting/index.ts";
import { type Job, partsOf, resolveCutting, resolveShade } from "../../job/index.ts";
import { carefulLift } from "../../safety/index.ts";
import type { Plan } from "../plan-types.ts";
import { clothPieces } from "./cloth-pieces.ts";
import { clothProblem } from "./cloth-problem.ts";
import {
  type ClothCutting,
  CUTTING_FORMAT,
  CUTTING_VERSION,
  type CuttingPlan,
  type KnownCloth,
} from "./cutting-plan.ts";
import { type LengthsTask, lengthTasks, type ShadeParts } from "./length-problems.ts";
import { withOwnIds } from "./own-ids.ts";

/** A round of patterns for stock lengths costs about as much as so many cloth plans. */
const TRIES_PER_ROUND = 5;
/** Tries of one cloth before the next is looked at. */
const PORTION = 50;

interface ClothTask extends Omit<ClothCutting, "answer"> {
  search: ClothSearching;
  /** Money, or millimetres where there is no price, for one millimetre of new cloth. */
  worth: number;
}

/**
 * Looks for the least cloth and the fewest lengths for a whole job, a few tries at a time. A plan is there from the
 * beginning, and a better one may be after each step; the same tries give the same plan.
 */
export class CuttingSearch {
  readonly #job: Pick<CuttingPlan, "jobId" | "jobName" | "units">;
  readonly #cloths: ClothTask[];
  readonly #lengths: { task: LengthsTask; search: LengthsSearch }[];

  /** @param known how cloth was laid in an earlier state of the job, by the ids of bolts as they are now */
  constructor(job: Job, plan: Plan, known: readonly KnownCloth[] = []) {
    this.#job = { jobId: plan.jobId, jobName: plan.jobName, units: plan.units };
    const cutting = resolveCutting(job.cutting);
    const parts = partsOf(job);
    const stock = withOwnIds(job.stock);
    const pieces = clothPieces(plan.shades, parts.cloths);
    this.#cloths = parts.cloths.flatMap((cloth) => {
      const made = clothProblem(pieces.get(cloth.id) ?? [], cloth, stock, cutting, job);
      if (made === undefined) return [];
      const { id: clothId, name: clothName } = cloth;
      const laid = known.find((one) => one.clothId === clothId)?.laid;
      const worth = (cloth.pricePerM ?? 1000) / 1000;
      return [{ clothId, clothName, ...made, worth, search: startClothSearch(made.problem, laid) }];
    });
    this.#lengths = lengthTasks(partsOfShades(job, plan), stock, cutting, job.rates.prices).map((task) => ({
      task,
      search: new LengthsSearch(task.problem),
    }));
  }

  get done(): boolean {
    return (
      this.#cloths.every(({ search }) => search.done) && this.#lengths.every(({ search }) => search.done)
    );
  }

  /** Of all cloths. */
  get pieces(): number {
    return this.#cloths.reduce((sum, { problem }) => sum + problem.pieces.length, 0);
  }

  /** Tries so far, of cloth plans alone. */
  get tries(): number {
    return this.#cloths.reduce((sum, { search }) => sum + search.evaluations, 0);
  }

  /**
   * About so many tries more, where the most may be saved, or fewer where it is time to stop; true while there is more
   * to do.
   */
  improve(tries: number, shouldStop: ShouldStop = NEVER): boolean {
    let left = tries;
    while (left > 0 && !this.done && !shouldStop()) {
      for (const { search } of this.#lengths) {
        if (left <= 0 || search.done || shouldStop()) continue;
        search.step();
        left -= TRIES_PER_ROUND;
      }
      const next = this.#next();
      if (next === undefined || left <= 0) continue;
      const before = next.search.evaluations;
      next.search.improve(Math.min(left, PORTION), shouldStop);
      left -= Math.max(1, next.search.evaluations - before);
    }
    return !this.done;
  }

  /** The cloth with the most to be saved for the tries that it has had. */
  #next(): ClothTask | undefined {
    let best: ClothTask | undefined;
    let most = -1;
    for (const task of this.#cloths) {
      const { search, worth } = task;
      if (search.done) continue;
      const open = Number.isFinite(search.cost) ? search.cost - search.lowerBound.cost : 1e9;
      const value = (open * worth) / (PORTION + search.evaluations);
      if (value > most) [best, most] = [task, value];
    }
    return best;
  }

  /** Lengths whose search has ended with a gap. */
  get openLengths(): number {
    return this.#lengths.filter(({ search }) => search.done && !search.isSettled).length;
  }

  /** Closes gaps that the search of lengths has left, where an exact solver can. */
  proveLengths(solve: SolveWhole, shouldStop: ShouldStop = NEVER): void {
    for (const { search } of this.#lengths) {
      if (shouldStop()) return;
      if (search.done) proveLengths(search, solve);
    }
  }

  /** The best plan so far, checked. `stopped` where the maker stopped it. */
  plan(status: "feasible" | "stopped" = "feasible"): CuttingPlan {
    return {
      format: CUTTING_FORMAT,
      version: CUTTING_VERSION,
      ...this.#job,
      cloths: this.#cloths.map(({ search, worth: _, ...cloth }) => ({
        ...cloth,
        answer: search.answer(status),
      })),
      lengths: this.#lengths.map(({ task, search }) => ({
        ...task,
        answer: search.answer(status),
      })),
    };
  }
}

/** What each shade's parts follow from, as the cost of it does; one shade after the other, for of thousands not all are kept. */
function* partsOfShades(job: Job, plan: Plan): Generator<ShadeParts> {
  const parts = partsOf(job);
  const careful = carefulLift(job);
  const shades = new Map(plan.shades.map((shade) => [shade.shadeId, shade]));
  for (const [r, room] of job.rooms.entries()) {
    for (const [w, window] of room.windows.entries()) {
      const planned = shades.get(window.id);
      if (planned === undefined) continue;
      const resolved = resolveShade(job, parts, room, window, `/rooms/${r}/windows/${w}`, careful);
      const { size, grid, form, cloth, lift, board, existing } = planned;
      yield { shade: resolved, windowName: window.name, size, grid, form, cloth, lift, board, existing };
    }
  }
}

/** Tries for a first answer: a moment for a few shades. */
export const FIRST_TRIES = 300;

/**
 * How everything of a job is cut, after about so many tries. `plan(job)` computes cloth layer by layer; this puts the
 * pieces of all shades together.
 */
export function planCutting(job: Job, plan: Plan, tries = FIRST_TRIES): CuttingPlan {
  const search = new CuttingSearch(job, plan);
  search.improve(tries);
  return search.plan();
}
