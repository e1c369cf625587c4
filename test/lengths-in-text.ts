import { markMm, parseLength, type UnitChoice } from "../src/units/index.ts";

/** Cord is told in feet and inches, as one length. */
const LENGTH = /(\d+ \d+⁄\d+|\d+⁄\d+|\d+(?:\.\d+)?) (in|mm|cm|yd|ft|m)\b(?:(?<=ft) (?:\d|1[01]) in\b)?/g;

/** Every length that a text states, mm, with what it is written as. */
export function lengthsIn(text: string): { written: string; lengthMm: number; unit: string }[] {
  return [...text.replaceAll("\u00a0", " ").matchAll(LENGTH)].map(([written, , unit = ""]) => {
    const parsed = parseLength(written, "mm");
    if (!parsed.ok) throw new Error(`unreadable length: ${written}`);
    return { written, lengthMm: parsed.lengthMm, unit };
  });
}

/** All numbers of a plan, wherever they stand in it. */
export function numbersOf(value: unknown, found: number[] = []): number[] {
  if (typeof value === "number") found.push(value);
  else if (typeof value === "object" && value !== null) {
    for (const part of Object.values(value)) numbersOf(part, found);
  }
  return found;
}

/** Half a mark for rulers; half the last printed digit for metres; cloth is raised to an eighth of a yard. */
function toleranceMm(unit: string, units: UnitChoice): number {
  const printed: Record<string, number> = { yd: 914.4 / 8, m: 10 / 2 };
  return (printed[unit] ?? markMm(units.ruler) / 2) + 1e-6;
}

/** Lengths of a text that none of the figures rounds to. */
export function strayLengths(text: string, figures: readonly number[], units: UnitChoice): string[] {
  return lengthsIn(text)
    .filter(({ lengthMm, unit }) => {
      // Feet are raised to the whole inch: never less than the figure.
      if (unit === "ft")
        return !figures.some((figure) => lengthMm > figure - 0.1 && lengthMm - figure < 25.4);
      const tolerance = toleranceMm(unit, units);
      return !figures.some((figure) => Math.abs(figure - lengthMm) <= tolerance);
    })
    .map(({ written }) => written);
}
