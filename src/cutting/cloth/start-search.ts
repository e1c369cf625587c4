import { HeldSearch } from "./held/held-search.ts";
import { LotSearch } from "./lot-search.ts";
import type { ClothProblem } from "./problem.ts";
import { ClothSearch } from "./search.ts";
import type { ClothSearching } from "./searching.ts";

/**
 * Begins to look for the cheapest plan; round held pieces where there are any, and from the lots of what is cut.
 *
 * @throws where a size is not above 0, a cost below it, or an id given twice
 */
export function startClothSearch(problem: ClothProblem): ClothSearching {
  if (problem.boundLots !== undefined) return new LotSearch(problem);
  return problem.held?.length ? new HeldSearch(problem) : new ClothSearch(problem);
}
