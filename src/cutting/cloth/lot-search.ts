import { NEVER, type ShouldStop } from "../should-stop.ts";
import { HeldSearch } from "./held/held-search.ts";
import type { Bound, BoundLot, ClothAnswer, ClothProblem, LaidOnBolt } from "./problem.ts";
import { ClothSearch } from "./search.ts";
import type { ClothSearching } from "./searching.ts";

/** Plans tried before a lot is held to be too short. */
const TRIES = 200;

/**
 * Cuts the rest of a shade from the dye lot of what is cut of it already. Where that lot has no cloth enough, its group
 * comes from another, and the plan says so.
 */
export class LotSearch implements ClothSearching {
  readonly problem: ClothProblem;
  readonly #otherLots: BoundLot[] = [];
  readonly #search: ClothSearching;
  #spent = 0;

  constructor(problem: ClothProblem, known?: readonly LaidOnBolt[]) {
    this.problem = problem;
    const bound = new Map(
      Object.entries(problem.boundLots ?? {}).filter(([group]) =>
        problem.pieces.some(({ lotGroup }) => lotGroup === group),
      ),
    );
    for (;;) {
      const search = searchFor({ ...problem, boundLots: Object.fromEntries(bound) }, known);
      if (bound.size > 0 && !Number.isFinite(search.cost)) search.improve(TRIES);
      const given = Number.isFinite(search.cost) ? undefined : hardest(problem, bound, search);
      if (given === undefined) {
        this.#search = search;
        return;
      }
      this.#spent += search.evaluations;
      bound.delete(given.lotGroup);
      this.#otherLots.push(given);
    }
  }

  get done(): boolean {
    return this.#search.done;
  }

  get cost(): number {
    return this.#search.cost;
  }

  get lowerBound(): Bound {
    return this.#search.lowerBound;
  }

  get evaluations(): number {
    return this.#spent + this.#search.evaluations;
  }

  improve(evaluations: number, shouldStop: ShouldStop = NEVER): boolean {
    return this.#search.improve(evaluations, shouldStop);
  }

  answer(status: "feasible" | "stopped" = "feasible"): ClothAnswer {
    const answer = this.#search.answer(status);
    if (!("bolts" in answer) || this.#otherLots.length === 0) return answer;
    return { ...answer, evaluations: this.evaluations, otherLots: this.#otherLots };
  }
}

function searchFor(problem: ClothProblem, known?: readonly LaidOnBolt[]): ClothSearching {
  return problem.held?.length ? new HeldSearch(problem) : new ClothSearch(problem, known);
}

/** The bound group that finds no place: one of those left over, or else the one with the most cloth. */
function hardest(
  { pieces }: ClothProblem,
  bound: ReadonlyMap<string, string>,
  search: ClothSearching,
): BoundLot | undefined {
  const answer = search.answer();
  const left = new Set("pieceIds" in answer ? answer.pieceIds : []);
  let worst: { lotGroup: string; lot: string; size: number } | undefined;
  for (const [lotGroup, lot] of bound) {
    const own = pieces.filter((piece) => piece.lotGroup === lotGroup);
    const areaMm2 = own.reduce((sum, { widthMm, lengthMm }) => sum + widthMm * lengthMm, 0);
    const size = (own.some(({ id }) => left.has(id)) ? 1e15 : 0) + areaMm2;
    if (worst === undefined || size > worst.size) worst = { lotGroup, lot, size };
  }
  return worst && { lotGroup: worst.lotGroup, lot: worst.lot };
}
