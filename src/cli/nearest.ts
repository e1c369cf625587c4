/** Fewest letters to put in, take out or change to make one word of the other (Levenshtein's distance). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, n) => n);
  for (let i = 0; i < a.length; i++) {
    const next = [i + 1];
    for (let j = 0; j < b.length; j++) {
      const change = (row[j] ?? 0) + (a[i] === b[j] ? 0 : 1);
      next.push(Math.min(change, (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/** The word most like the one that was typed, where one is like it at all. */
export function nearest(typed: string, words: readonly string[]): string | undefined {
  const ranked = words
    .map((word) => ({ word, away: distance(typed.toLowerCase().slice(0, 80), word.toLowerCase()) }))
    .sort((a, b) => a.away - b.away);
  const best = ranked[0];
  return best && best.away <= Math.max(2, best.word.length / 3) ? best.word : undefined;
}
