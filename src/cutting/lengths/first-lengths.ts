import { fillFirst } from "./fill-first.ts";
import { layBars } from "./lay-bars.ts";
import type { LengthsPlan, LengthsProblem } from "./problem.ts";
import { wholeLengths } from "./whole-lengths.ts";

/**
 * A good plan at once, without a search, a bound or tidying: what a list is computed by while the maker types. Undefined
 * where a cut fits nothing that can be had.
 */
export function firstLengths(problem: LengthsProblem): LengthsPlan | undefined {
  const { whole, typeOf } = wholeLengths(problem);
  const bars = fillFirst(whole);
  return bars && layBars(problem, whole, typeOf, bars);
}
