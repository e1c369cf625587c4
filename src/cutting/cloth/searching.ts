import type { ShouldStop } from "../should-stop.ts";
import type { Bound, ClothAnswer, ClothProblem } from "./problem.ts";

/** A search for the cheapest way to cut the pieces of one cloth, a few plans at a time. */
export interface ClothSearching {
  readonly problem: ClothProblem;
  /** Nothing more to look for. */
  readonly done: boolean;
  /** Of the best plan so far; infinite where there is none. */
  readonly cost: number;
  /** No plan can cost less. */
  readonly lowerBound: Bound;
  /** Plans tried so far. */
  readonly evaluations: number;
  /** Tries about so many plans more, or fewer where it is time to stop; true while there is more to do. */
  improve(evaluations: number, shouldStop?: ShouldStop): boolean;
  /** The best so far, checked. */
  answer(status?: "feasible" | "stopped"): ClothAnswer;
}
