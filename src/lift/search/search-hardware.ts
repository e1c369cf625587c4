import { LIFT_KIND_MODULES } from "../kinds/index.ts";
import { better } from "./best-sets.ts";
import type { HardwareNeed, HardwareSearch, HardwareSet, PartShelf, Refusal } from "./need.ts";

/**
 * Every set of parts that can raise the shade, the easiest pull first, and every pairing that cannot, with the
 * figures that refuse it. Of each kind of lift the best `most` sets are kept: a motor asks nothing of the hand and would
 * crowd out all others. The number of sets is the product of the lists; for each kind each pair is judged once.
 */
export function searchHardware(need: HardwareNeed, shelf: PartShelf, most = 12): HardwareSearch {
  const found = Object.values(LIFT_KIND_MODULES).map(({ search }) => search(need, shelf, most));
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
    refusals: alikeTogether(found.flatMap(({ refusals }) => refusals)).sort((a, b) => b.sets - a.sets),
  };
}

/** A tube and a cord that do not go together are refused by every lift that has a tube: once for all of them. */
function alikeTogether(refusals: readonly Refusal[]): Refusal[] {
  const byText = new Map<string, Refusal>();
  for (const one of refusals) {
    const same = byText.get(one.text);
    byText.set(one.text, same === undefined ? one : { ...same, sets: same.sets + one.sets });
  }
  return [...byText.values()];
}
