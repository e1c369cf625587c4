import { type ClothProblem, ClothSearch } from "../src/cutting/index.ts";

/** What the cheapest plan costs that is found in so long. */
export function costAfter(problem: ClothProblem, ms: number): number {
  const begun = performance.now();
  const search = new ClothSearch(problem);
  while (performance.now() - begun < ms && search.improve(256));
  return search.cost;
}
