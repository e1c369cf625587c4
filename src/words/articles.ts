/** `a flat`, `an Austrian`: by the first letter, which is enough for the words of this house. */
export function withArticle(words: string): string {
  return `${/^[aeiou]/i.test(words) ? "an" : "a"} ${words}`;
}
