/** The first sentence of a text: up to a full stop that a new sentence follows, not one within a number or a name. */
export function firstSentence(text: string): string {
  return /^.+?[.!?](?= [\p{Lu}0-9“]|$)/u.exec(text)?.[0] ?? text;
}
