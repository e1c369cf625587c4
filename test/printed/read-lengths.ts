import { expect } from "vitest";
import { markMm, parseLength, type UnitChoice } from "../../src/units/index.ts";

/** A length as it is printed, on either ruler. */
export const LENGTH = String.raw`−?(?:\d+ \d+⁄\d+|\d+⁄\d+|\d+(?:\.\d+)?) (?:in|mm)`;

export const literally = (words: string) => words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** Millimetres of a printed length, by the parser that reads what makers type. */
function lengthMmOf(text: string): number {
  const below = text.startsWith("−");
  const read = parseLength(below ? text.slice(1) : text, "mm");
  if (!read.ok) throw new Error(`unreadable length: ${text}`);
  return below ? -read.lengthMm : read.lengthMm;
}

/** That so many lengths stand behind some words, in this order, each to half a mark of the ruler. */
export function expectLengths(
  text: string,
  words: string,
  expectedMm: readonly number[],
  { ruler }: UnitChoice,
  between = " ",
): void {
  const pattern = new RegExp(`${words}${expectedMm.map(() => `(${LENGTH})`).join(between)}`);
  const found = pattern.exec(text.replaceAll("\u00a0", " "));
  if (found === null)
    throw new Error(`“${words}” and ${expectedMm.length} lengths are not in: ${text.slice(0, 600)}`);
  expectedMm.forEach((mm, i) => {
    const read = lengthMmOf(found[i + 1] ?? "");
    expect(Math.abs(read - mm), `${words}: ${found[0]} for ${mm} mm`).toBeLessThanOrEqual(
      markMm(ruler) / 2 + 0.001,
    );
  });
}

/** Numbers and lengths of `1 at 2 in, 2 at 10 in`. */
export function numberedLengths(text: string, preposition: string): { number: number; lengthMm: number }[] {
  const pattern = new RegExp(`(\\d+) ${preposition} (${LENGTH})`, "g");
  return [...text.replaceAll("\u00a0", " ").matchAll(pattern)].map(([, number, length = ""]) => ({
    number: Number(number),
    lengthMm: lengthMmOf(length),
  }));
}
