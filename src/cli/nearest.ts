/**
 * Fewest letters to put in, take out, change or swap with the next to make one word of the other (Damerau's distance,
 * each pair swapped once).
 */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, n) => n);
  for (let i = 0; i < a.length; i++) {
    const next = [i + 1];
    for (let j = 0; j < b.length; j++) {
      const change = (row[j] ?? 0) + (a[i] === b[j] ? 0 : 1);
      const isSwap = i > 0 && j > 0 && a[i] === b[j - 1] && a[i - 1] === b[j];
      const swap = isSwap ? (before[j - 1] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      next.push(Math.min(change, swap, (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1));
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? 0;
}

/** The word most like the one that was typed, where one is like it at all. */
export function nearest(typed: string, words: readonly string[]): string | undefined {
  const ranked = words
    .map((word) => ({
      word,
      away: distance(typed.toLowerCase().slice(0, 80), word.toLowerCase()),
      // Seldom is the first letter the wrong one.
      first: word[0]?.toLowerCase() === typed[0]?.toLowerCase() ? 0 : 1,
    }))
    .sort((a, b) => a.away - b.away || a.first - b.first);
  const best = ranked[0];
  return best && best.away <= Math.max(2, best.word.length / 3) ? best.word : undefined;
}
