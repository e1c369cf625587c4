/** The longest cut, mm; 0 for none. A loop, since a job can hold more cuts than a call takes arguments. */
export function longestMm(cutsMm: readonly number[]): number {
  let longest = 0;
  for (const cutMm of cutsMm) if (cutMm > longest) longest = cutMm;
  return longest;
}
