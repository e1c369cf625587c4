import { HeldSearch } from "./held/held-search.ts";
import type { ClothProblem } from "./problem.ts";
import { ClothSearch } from "./search.ts";
import type { ClothSearching } from "./searching.ts";

/**
 * Begins to look for the cheapest plan; round held pieces where there are any.
 *
 * @throws where a size is not above 0, a cost below it, or an id given twice
 */
export function startClothSearch(problem: ClothProblem): ClothSearching {
  return problem.held?.length ? new HeldSearch(problem) : new ClothSearch(problem);
}
