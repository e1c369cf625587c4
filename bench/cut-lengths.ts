import { LengthsSearch } from "../src/cutting/index.ts";
import { lengthsProblem, STOCK_INSTANCES } from "../test/cutting/stock-lengths.ts";
import { type Figure, timed } from "./figure.ts";

/** Its fractions leave a bar open for good, and whole bars are searched for as long as one likes. */
const NEVER_CLOSES = "Hard28_BPP14";

/** The slowest of the published sets of cutting stock, until its best known number of bars is reached. */
export function cutLengths(): Figure {
  let slowest = 0;
  for (const instance of STOCK_INSTANCES.filter(({ id }) => id !== NEVER_CLOSES)) {
    const problem = lengthsProblem(instance);
    const work = () => {
      const search = new LengthsSearch(problem);
      while (search.cost > instance.bestKnownBars && search.step());
      if (search.cost > instance.bestKnownBars)
        throw new Error(`invalid run: ${instance.id} at ${search.cost}`);
    };
    work();
    slowest = Math.max(slowest, timed(work));
  }
  return { name: "cut.lengths", value: slowest, unit: "ms", goal: 500, better: "lower" };
}
