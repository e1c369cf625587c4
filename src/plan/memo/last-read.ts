/** What was made last for each key, up to so many of them: what was read longest ago makes room, and is made again. */
export class LastRead<K, V> {
  readonly #most: number;
  readonly #forget: (key: K) => void;
  /** In the order in which they were read. */
  readonly #held = new Map<K, V>();

  /** @param forget is told of what makes room */
  constructor(most: number, forget: (key: K) => void = () => {}) {
    this.#most = most;
    this.#forget = forget;
  }

  of(key: K, make: () => V): V {
    const held = this.#held.get(key);
    const value = held ?? make();
    this.#held.delete(key);
    this.#held.set(key, value);
    if (this.#held.size > this.#most) this.#leaveOldest();
    return value;
  }

  #leaveOldest(): void {
    for (const oldest of this.#held.keys()) {
      this.#held.delete(oldest);
      this.#forget(oldest);
      return;
    }
  }
}
