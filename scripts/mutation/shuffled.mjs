/**
 * A list in another order, the same for the same seed: Fisher and Yates, with numbers from SplitMix (constants from memory).
 * @template T
 * @param {readonly T[]} list
 * @param {number} seed
 */
export function shuffled(list, seed) {
  const all = [...list];
  let state = seed | 0;
  for (let last = all.length - 1; last > 0; last--) {
    state = (state + 0x9e3779b9) | 0;
    let z = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    const at = ((z ^ (z >>> 15)) >>> 0) % (last + 1);
    const held = /** @type {T} */ (all[last]);
    all[last] = /** @type {T} */ (all[at]);
    all[at] = held;
  }
  return all;
}
