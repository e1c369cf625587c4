/** Largest size of all values; no number where one of them is none. */
export function largestOf(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) {
    const size = Math.abs(values[i] as number);
    if (size > most) most = size;
    else if (Number.isNaN(size)) return size;
  }
  return most;
}
