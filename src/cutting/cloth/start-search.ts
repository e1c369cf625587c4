import { HeldSearch } from "./held/held-search.ts";
import { LotSearch } from "./lot-search.ts";
import type { ClothProblem, LaidOnBolt } from "./problem.ts";
import { ClothSearch } from "./search.ts";
import type { ClothSearching } from "./searching.ts";

/**
 * Begins to look for the cheapest plan; round held pieces where there are any, and from the lots of what is cut.
 *
 * @param known a plan of an earlier state of the job, to begin with where it can still be cut
 * @throws where a size is not above 0, a cost below it, or an id given twice
 */
export function startClothSearch(problem: ClothProblem, known?: readonly LaidOnBolt[]): ClothSearching {
  if (problem.boundLots !== undefined) return new LotSearch(problem, known);
  return problem.held?.length ? new HeldSearch(problem) : new ClothSearch(problem, known);
}
