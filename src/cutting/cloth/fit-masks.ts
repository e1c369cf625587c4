/** How well an item fits a rectangle: not, with room on both sides, with room on one, with none. */
export const NO_FIT = 0;
const SOME_FIT = 1;
const ONE_SIDE = 2;
const EXACT = 3;

/**
 * Items in an order of preference, and at once which of them fit into a rectangle.
 *
 * For every width that occurs there is a set of the places in the order whose item is no wider, and one of those
 * that are just as wide; for heights the same. Sets are bits of 32-bit words, so one AND answers for 32 items.
 */
export class FitMasks {
  readonly count: number;
  readonly words: number;
  /** Item at each place. */
  readonly order: Int32Array;
  /** Sizes by item, as it now lies. */
  readonly w: Int32Array;
  readonly h: Int32Array;
  /** Of all items together. */
  readonly area: number;
  /** Places still to be filled. */
  readonly open: Int32Array;
  /** How well the place that `bestFit` has found last fits. */
  fitFound = NO_FIT;
  /** All words before it are filled: of many items those in front soon are. */
  private firstOpen = 0;
  /** Items that may be turned. */
  readonly turning: number[];
  private readonly widths: Ranks;
  private readonly heights: Ranks;
  private readonly kinds: Kinds | undefined;

  /** @param kindOf items that cannot be told apart have one number, where there are such */
  constructor(items: readonly { w: number; h: number; turns: boolean }[], kindOf?: Int32Array) {
    this.count = items.length;
    this.words = (this.count + 31) >> 5;
    this.w = Int32Array.from(items, ({ w }) => w);
    this.h = Int32Array.from(items, ({ h }) => h);
    this.area = items.reduce((sum, { w, h }) => sum + w * h, 0);
    this.order = Int32Array.from(this.w, (_, item) => item);
    this.open = new Int32Array(this.words);
    this.turning = Array.from(this.w.keys()).filter((item) => items[item]?.turns);
    this.widths = new Ranks([...this.w, ...this.turning.map((item) => this.h[item] ?? 0)], this.words);
    this.heights = new Ranks([...this.h, ...this.turning.map((item) => this.w[item] ?? 0)], this.words);
    this.kinds = kindOf && new Kinds(kindOf, this.words);
    this.setOrder(this.order);
  }

  setOrder(order: ArrayLike<number>): void {
    this.order.set(order);
    this.widths.clear();
    this.heights.clear();
    this.kinds?.setOrder(this.order);
    this.order.forEach((item, place) => {
      this.widths.toggle(this.w[item] ?? 0, place);
      this.heights.toggle(this.h[item] ?? 0, place);
    });
  }

  openAll(): void {
    this.firstOpen = 0;
    this.open.fill(-1);
    if (this.count & 31) this.open[this.words - 1] = (1 << (this.count & 31)) - 1;
  }

  close(place: number): void {
    const { open, words } = this;
    open[place >> 5] = (open[place >> 5] ?? 0) & ~(1 << (place & 31));
    while (this.firstOpen < words && open[this.firstOpen] === 0) this.firstOpen++;
  }

  swap(p: number, q: number): void {
    const a = this.order[p] ?? 0;
    const b = this.order[q] ?? 0;
    this.order[p] = b;
    this.order[q] = a;
    this.kinds?.exchange(a, b, p, q);
    this.widths.exchange(this.w[a] ?? 0, this.w[b] ?? 0, p, q);
    this.heights.exchange(this.h[a] ?? 0, this.h[b] ?? 0, p, q);
  }

  /** Turns the item at a place by a quarter. */
  turn(place: number): void {
    const item = this.order[place] ?? 0;
    const w = this.w[item] ?? 0;
    const h = this.h[item] ?? 0;
    this.widths.toggle(w, place);
    this.widths.toggle(h, place);
    this.heights.toggle(h, place);
    this.heights.toggle(w, place);
    this.w[item] = h;
    this.h[item] = w;
  }

  /** First open place, not before `from` and not skipped, whose item fits; −1 when none does. */
  nextFit(w: number, h: number, from: number): number {
    const a = this.widths.rankOf(w) * this.words;
    const b = this.heights.rankOf(h) * this.words;
    return a === 0 || b === 0 ? -1 : this.firstOf(a, b, from);
  }

  /** The same of a rectangle as wide and as high as the ranks that begin at these words. */
  private firstOf(a: number, b: number, from: number): number {
    const { open, words } = this;
    const wide = this.widths.upTo;
    const high = this.heights.upTo;
    const skipped = this.kinds?.skipped;
    let mask = -1 << (from & 31);
    let k = from >> 5;
    if (k < this.firstOpen) [k, mask] = [this.firstOpen, -1];
    for (; k < words; k++) {
      let bits = mask & (open[k] as number);
      bits &= wide[a + k] as number;
      bits &= high[b + k] as number;
      if (skipped) bits &= ~(skipped[k] as number);
      if (bits !== 0) return (k << 5) + 31 - Math.clz32(bits & -bits);
      mask = -1;
    }
    return -1;
  }

  /** No place is skipped any more. */
  skipNone(): void {
    this.kinds?.skipped.fill(0);
  }

  /** `nextFit` does not come to items any more that cannot be told from the one at a place. */
  skipAlike(place: number): void {
    this.kinds?.skip(this.order[place] as number);
  }

  /** How well an item as it lies fits a rectangle. */
  fitOf(item: number, w: number, h: number): number {
    const besideW = w - (this.w[item] as number);
    const belowH = h - (this.h[item] as number);
    if (besideW < 0 || belowH < 0) return NO_FIT;
    if (besideW === 0) return belowH === 0 ? EXACT : ONE_SIDE;
    return belowH === 0 ? ONE_SIDE : SOME_FIT;
  }

  /** First open place whose item fills the rectangle, else fits one of its sides, else fits; −1 when none does. */
  bestFit(w: number, h: number): number {
    const { open, words, widths, heights } = this;
    this.fitFound = NO_FIT;
    const rankW = widths.rankOf(w);
    const rankH = heights.rankOf(h);
    const a = rankW * words;
    const b = rankH * words;
    if (a === 0 || b === 0) return -1;
    const wide = widths.upTo;
    const high = heights.upTo;
    const sameWidth = widths.same;
    const sameHeight = heights.same;
    const ea = widths.valueAt(rankW) === w ? a : 0;
    const eb = heights.valueAt(rankH) === h ? b : 0;
    if (ea === 0 && eb === 0) {
      const place = this.firstOf(a, b, 0);
      if (place >= 0) this.fitFound = SOME_FIT;
      return place;
    }
    let oneSide = -1;
    let any = -1;
    for (let k = this.firstOpen; k < words; k++) {
      const bits = open[k] as number;
      if (bits === 0) continue;
      const e1 = (sameWidth[ea + k] as number) & bits;
      const e2 = (sameHeight[eb + k] as number) & bits;
      const both = e1 & e2;
      if (both !== 0) {
        this.fitFound = EXACT;
        return (k << 5) + 31 - Math.clz32(both & -both);
      }
      if (oneSide >= 0) continue;
      const fitsHigh = high[b + k] as number;
      const fitsWide = wide[a + k] as number;
      const one = (e1 & fitsHigh) | (e2 & fitsWide);
      if (one !== 0) oneSide = (k << 5) + 31 - Math.clz32(one & -one);
      if (any >= 0) continue;
      const fits = bits & fitsWide & fitsHigh;
      if (fits !== 0) any = (k << 5) + 31 - Math.clz32(fits & -fits);
    }
    if (oneSide >= 0) {
      this.fitFound = ONE_SIDE;
      return oneSide;
    }
    if (any >= 0) this.fitFound = SOME_FIT;
    return any;
  }
}

/** Sets of the places of items that cannot be told apart. */
class Kinds {
  private readonly kindOf: Int32Array;
  private readonly words: number;
  private readonly places: Int32Array;
  readonly skipped: Int32Array;

  constructor(kindOf: Int32Array, words: number) {
    this.kindOf = kindOf;
    this.words = words;
    const count = kindOf.reduce((most, kind) => Math.max(most, kind + 1), 0);
    this.places = new Int32Array(count * words);
    this.skipped = new Int32Array(words);
  }

  setOrder(order: Int32Array): void {
    this.places.fill(0);
    order.forEach((item, place) => {
      this.flip(item, place);
    });
  }

  exchange(a: number, b: number, p: number, q: number): void {
    if (this.kindOf[a] === this.kindOf[b]) return;
    for (const item of [a, b]) {
      this.flip(item, p);
      this.flip(item, q);
    }
  }

  skip(item: number): void {
    const from = (this.kindOf[item] as number) * this.words;
    for (let k = 0; k < this.words; k++) {
      this.skipped[k] = (this.skipped[k] as number) | (this.places[from + k] as number);
    }
  }

  private flip(item: number, place: number): void {
    const at = (this.kindOf[item] as number) * this.words + (place >> 5);
    this.places[at] = (this.places[at] as number) ^ (1 << (place & 31));
  }
}

/** Buckets in which values are looked up: with few values in each, finding one is a step or two. */
const MOST_BUCKETS = 4096;

/** Sets of places for every value of one side; rank 0 is below them all. */
class Ranks {
  readonly upTo: Int32Array;
  readonly same: Int32Array;
  private readonly count: number;
  private readonly greatest: number;
  /** The values, least first, and behind them one that nothing reaches. */
  private readonly values: Float64Array;
  /** Of each bucket: how many values lie in those before it. */
  private readonly before: Int32Array;
  private readonly shift: number;
  private readonly words: number;

  constructor(values: readonly number[], words: number) {
    const sorted = Array.from(new Set(values)).sort((a, b) => a - b);
    this.words = words;
    this.count = sorted.length;
    this.greatest = sorted[sorted.length - 1] ?? 0;
    this.values = Float64Array.from([...sorted, Number.POSITIVE_INFINITY]);
    let shift = 0;
    while (this.greatest >> shift >= MOST_BUCKETS) shift++;
    this.shift = shift;
    this.before = new Int32Array((this.greatest >> shift) + 1);
    sorted.forEach((value, k) => {
      this.before.fill(k + 1, (value >> shift) + 1);
    });
    this.upTo = new Int32Array((this.count + 1) * words);
    this.same = new Int32Array((this.count + 1) * words);
  }

  rankOf(value: number): number {
    if (value > this.greatest) return this.count;
    let rank = this.before[value >> this.shift] as number;
    while ((this.values[rank] as number) <= value) rank++;
    return rank;
  }

  /** The value of a rank above 0. */
  valueAt(rank: number): number {
    return this.values[rank - 1] as number;
  }

  clear(): void {
    this.upTo.fill(0);
    this.same.fill(0);
  }

  toggle(value: number, place: number): void {
    const rank = this.rankOf(value);
    this.flip(this.same, rank, place);
    for (let r = rank; r <= this.count; r++) this.flip(this.upTo, r, place);
  }

  /** The values at two places change places. */
  exchange(a: number, b: number, p: number, q: number): void {
    if (a === b) return;
    const low = this.rankOf(Math.min(a, b));
    const high = this.rankOf(Math.max(a, b));
    for (const rank of [low, high]) {
      this.flip(this.same, rank, p);
      this.flip(this.same, rank, q);
    }
    for (let r = low; r < high; r++) {
      this.flip(this.upTo, r, p);
      this.flip(this.upTo, r, q);
    }
  }

  private flip(set: Int32Array, rank: number, place: number): void {
    const at = rank * this.words + (place >> 5);
    set[at] = (set[at] as number) ^ (1 << (place & 31));
  }
}
