import { better } from "./best-sets.ts";
import type { HardwareNeed, HardwareSearch, HardwareSet, PartShelf } from "./need.ts";
import { searchLocks } from "./search-locks.ts";
import { searchTubes } from "./search-tubes.ts";

/**
 * Every set of parts that can raise the shade, the easiest pull first, and every pairing that cannot, with the
 * figures that refuse it. Of each kind of lift the best `most` sets are kept. The number of sets is the product of the lists; each pair is judged once.
 */
export function searchHardware(need: HardwareNeed, shelf: PartShelf, most = 12): HardwareSearch {
  const found = [searchLocks(need, shelf, most), searchTubes(need, shelf, most)];
  const rank = (set: HardwareSet) => ({
    pullN: set.pullN,
    price: set.price ?? Number.POSITIVE_INFINITY,
    pieces: set.pieces,
    first: 0,
    cord: 0,
    third: 0,
  });
  return {
    considered: found.reduce((sum, { considered }) => sum + considered, 0),
    feasible: found.reduce((sum, { feasible }) => sum + feasible, 0),
    sets: found.flatMap(({ sets }) => sets).sort((a, b) => better(rank(a), rank(b))),
    refusals: found.flatMap(({ refusals }) => refusals).sort((a, b) => b.sets - a.sets),
  };
}
