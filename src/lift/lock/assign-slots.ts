/**
 * Cords lie side by side in the lock, from the wall outwards, in their order along the board: the farthest on
 * the control side's inner end nearest the wall, the edge cord outermost. In that order no two cross, whatever
 * the cuts between slots. What is left to choose is where one slot ends and the next begins.
 */
export interface SlotProblem {
  /** Load of each cord, in their order from the wall outwards, N. */
  loadsN: readonly number[];
  /** The first so many come in by one end of the lock, the rest by the other. */
  fromInner: number;
  /** Distance of each slot that may be used from the line of the eyes, in order from the wall, mm. */
  offsetsMm: readonly number[];
  /** Cords in one slot at most. */
  perSlot: number;
}

/** Weights that put the aims in order: apart by end, as many in each slot, as much load, near the eyes' line. */
const SHARED = 1e6;
const COUNT = 10;
const OFFSET = 1e-6;
/**
 * Costs nearer than this are equal, and the first found stays: loads of a shade and of its mirror image differ in
 * their last digit, which must not move a cord to another slot. A tenth of a millimetre of offset still counts.
 */
const TIE = 1e-8;

/**
 * Exact by dynamic programming over (slots used, cords placed): least cost over all ways to cut the row of
 * cords into slots with at most `perSlot` each. Gives the cords in each slot, in order from the wall.
 *
 * @throws where the slots cannot take the cords: the caller sees to it that they do
 */
export function assignSlots(problem: SlotProblem): number[] {
  const { loadsN, offsetsMm, perSlot } = problem;
  const cords = loadsN.length;
  const slots = offsetsMm.length;
  if (cords > slots * perSlot)
    throw new Error(`invalid perSlot: ${cords} cords in ${slots} slots of ${perSlot}`);
  const width = cords + 1;
  const least = new Float64Array((slots + 1) * width).fill(Number.POSITIVE_INFINITY);
  const taken = new Int32Array((slots + 1) * width);
  const upTo = loadsUpTo(loadsN);
  least[0] = 0;
  for (let slot = 1; slot <= slots; slot++) {
    for (let placed = 0; placed <= cords; placed++) {
      const most = Math.min(perSlot, placed);
      for (let count = 0; count <= most; count++) {
        const before = least[(slot - 1) * width + placed - count] ?? Number.POSITIVE_INFINITY;
        const cost = before + slotCost(problem, upTo, slot - 1, placed - count, count);
        if (cost < (least[slot * width + placed] ?? 0) - TIE) {
          least[slot * width + placed] = cost;
          taken[slot * width + placed] = count;
        }
      }
    }
  }
  return readCounts(problem, taken, width);
}

function loadsUpTo(loadsN: readonly number[]): Float64Array {
  const upTo = new Float64Array(loadsN.length + 1);
  loadsN.forEach((load, i) => {
    upTo[i + 1] = (upTo[i] ?? 0) + load;
  });
  return upTo;
}

function slotCost(
  { fromInner, offsetsMm, loadsN }: SlotProblem,
  upTo: Float64Array,
  slot: number,
  first: number,
  count: number,
): number {
  if (count === 0) return 0;
  const total = upTo[loadsN.length] || 1;
  const share = ((upTo[first + count] ?? 0) - (upTo[first] ?? 0)) / total;
  const shared = first < fromInner && fromInner < first + count ? SHARED : 0;
  return shared + COUNT * count * count + share * share + OFFSET * count * (offsetsMm[slot] ?? 0);
}

function readCounts({ loadsN, offsetsMm }: SlotProblem, taken: Int32Array, width: number): number[] {
  const counts = new Array<number>(offsetsMm.length).fill(0);
  let placed = loadsN.length;
  for (let slot = counts.length; slot >= 1; slot--) {
    const count = taken[slot * width + placed] ?? 0;
    counts[slot - 1] = count;
    placed -= count;
  }
  return counts;
}
