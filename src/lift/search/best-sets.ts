/** A set as numbers: what it comes to, and the three parts by index. */
export interface Scored {
  pullN: number;
  price: number;
  pieces: number;
  first: number;
  cord: number;
  third: number;
}

/** Pulls closer than this are alike to a hand: the price decides. */
const ALIKE_N = 0.05;

/** Order of two sets, the better first, as `sort` takes it: less pull, then less money, then fewer pieces. */
export function better(a: Scored, b: Scored): number {
  const apart = Math.round(a.pullN / ALIKE_N) - Math.round(b.pullN / ALIKE_N);
  if (apart !== 0) return apart;
  // A set without a price comes after those that have one.
  if (a.price !== b.price) return a.price < b.price ? -1 : 1;
  return a.pieces - b.pieces || a.first - b.first || a.third - b.third || a.cord - b.cord;
}

/** Keeps the best so many of any number: a list twice as long, cut back whenever it is full. */
export class BestSets {
  readonly #most: number;
  #kept: Scored[] = [];
  #worst = Number.POSITIVE_INFINITY;

  constructor(most: number) {
    this.#most = most;
  }

  /** No set that pulls harder can still come in. */
  admits(pullN: number): boolean {
    return pullN <= this.#worst + ALIKE_N;
  }

  add(set: Scored): void {
    this.#kept.push(set);
    if (this.#kept.length >= 2 * this.#most + 16) this.#cut();
  }

  get sorted(): readonly Scored[] {
    this.#cut();
    return this.#kept;
  }

  #cut(): void {
    this.#kept.sort(better);
    this.#kept.length = Math.min(this.#kept.length, this.#most);
    if (this.#kept.length === this.#most) this.#worst = this.#kept.at(-1)?.pullN ?? this.#worst;
  }
}
