/** A run of numbers that follows from its seed: fast-check's own costs as much as planning a shade. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ 0xc2b2ae35;
  }

  /** From 0, below 1: Steele and Vigna's SplitMix, 32 bits of it, recalled from memory. */
  next(): number {
    this.#state = (this.#state + 0x9e3779b9) | 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0, below `end`. */
  below(end: number): number {
    return Math.floor(this.next() * end);
  }

  happens(share: number): boolean {
    return this.next() < share;
  }

  /** @throws Error where there is nothing to take from */
  oneOf<T>(list: readonly T[]): T {
    if (list.length === 0) throw new Error("invalid test: one of nothing");
    return list[this.below(list.length)] as T;
  }
}
