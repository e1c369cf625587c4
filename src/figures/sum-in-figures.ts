import { bareUnit, MM_PER_INCH, trimmed, type UnitChoice } from "../units/index.ts";
import type { Working } from "./working.ts";

/**
 * A formula with the figures in place of its symbols, lengths in the maker's unit: `(60 − 2.679) / (2·7 + 1)`. Only
 * where lengths and bare numbers alone go in, so that it holds in any unit of length; nothing else is told so.
 */
export function sumInFigures({ formula, inputs, unit }: Working, units: UnitChoice): string | undefined {
  const isLength = (of: string) => of === "mm";
  const isBare = (of: string) => of === "count" || of === "ratio";
  if (
    inputs.length === 0 ||
    ![unit, ...inputs.map((one) => one.unit)].every((of) => isLength(of) || isBare(of))
  ) {
    return undefined;
  }
  const inInches = bareUnit(units) === "in";
  const texts = new Map(
    inputs.map(({ symbol, value, unit: of }) => [
      symbol,
      trimmed(isLength(of) && inInches ? value / MM_PER_INCH : value, isLength(of) && !inInches ? 1 : 3),
    ]),
  );
  return formula.replace(/[\p{L}_][\p{L}\p{N}_]*/gu, (word) => texts.get(word) ?? word);
}
