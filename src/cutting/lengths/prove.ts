import type { SolveWhole } from "../whole-programme.ts";
import { arcFlow, barsOfFlow } from "./arc-flow.ts";
import type { LengthsSearch } from "./search.ts";
import { boundRaisedToStep } from "./whole-lengths.ts";

/** Larger flows keep a solver busy for minutes. */
const MOST_ARCS = 10_000;

/**
 * Closes the gap that a finished search has left, where the case is small enough: the exact arc-flow programme in the
 * solver handed in. What it finds or proves goes into the search. False where it was not tried.
 */
export function proveLengths(search: LengthsSearch, solve: SolveWhole): boolean {
  if (search.isSettled) return false;
  const flow = arcFlow(search.whole, MOST_ARCS);
  if (flow === undefined) return false;
  const { costStep } = search.whole;
  const { values, bound } = solve(flow.programme, search.bound.cost + costStep / 2);
  if (values) search.learn({ bars: barsOfFlow(search.whole, flow, values) });
  if (Number.isFinite(bound))
    search.learn({ bound: { cost: boundRaisedToStep(bound, costStep), by: "arc-flow" } });
  return true;
}
