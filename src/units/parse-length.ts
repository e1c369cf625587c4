import { MM_PER_FOOT, MM_PER_INCH, MM_PER_YARD } from "./length.ts";

/** The unit that a bare number is read in. */
export type BareUnit = "in" | "mm" | "cm";

export type ParsedLength = { ok: true; lengthMm: number } | { ok: false; reason: string };

const UNIT_MM: Record<string, number> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_FOOT,
  yd: MM_PER_YARD,
};

const VULGAR: Record<string, string> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** How parts of an inch are spoken, as a telephone writes down what it is told: `34 and three eighths inches`. */
const PARTS: Record<string, number> = { half: 2, quarter: 4, eighth: 8, sixteenth: 16 };
const COUNTS: Record<string, number> = {
  ...{ a: 1, an: 1, one: 1, three: 3, five: 5, seven: 7 },
  ...{ nine: 9, eleven: 11, thirteen: 13, fifteen: 15 },
};
const SPOKEN = new RegExp(
  String.raw`(?:\b(\d+|${Object.keys(COUNTS).join("|")})[ -]|(?<=^|\band ))(${Object.keys(PARTS).join("|")})s?\b(?: (?:of )?an (?=inch))?`,
  "g",
);

/** `three eighths` as `3/8`; what is no part of one inch, as `34 quarter`, stays to be refused. */
function spokenPart(spoken: string, count = "one", part = ""): string {
  const top = COUNTS[count] ?? Number(count);
  const bottom = PARTS[part] ?? 0;
  return top < bottom ? `${top}/${bottom} ` : spoken;
}

/** What a maker can write: shown with every refusal. */
export const LENGTH_EXAMPLES = `35 3/8, 35.375", 2' 11 3/8", 90,5 cm, 905 mm`;

const NUMBER = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const FRACTION = String.raw`\d+\s*/\s*\d+`;
/** A whole number may be joined to its fraction by a space or a hyphen: 35 3/8, 35-3/8. */
const TERM = new RegExp(
  String.raw`^(?:(\d+)(?:\s*-\s*|\s+)(${FRACTION})|(${FRACTION})|(${NUMBER}))\s*(mm|cm|m|in|ft|yd)?\s*`,
);

/** One spelling for every mark of feet, inches and fractions, so that the grammar stays small. */
function normalise(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(SPOKEN, spokenPart)
    .replace(/\band\b(?=\s*\d)/g, " ")
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR[mark]}`)
    .replace(/[⁄∕]/g, "/")
    .replace(/''|["”“″]/g, "in")
    .replace(/['’‘′]/g, "ft")
    .replace(/inch(?:es)?|zoll|\bins?\b/g, "in")
    .replace(/feet|foot/g, "ft")
    .replace(/yards?/g, "yd")
    .replace(/millimet(?:er|re)s?/g, "mm")
    .replace(/centimet(?:er|re)s?/g, "cm")
    .replace(/met(?:er|re)s?/g, "m")
    .replace(/\s+/g, " ")
    .trim();
}

function fractionValue(text: string): number | undefined {
  const [top, bottom] = text.split("/").map((part) => Number(part.trim()));
  if (top === undefined || bottom === undefined || bottom === 0) return undefined;
  return top / bottom;
}

/**
 * Reads a length as makers write it: `35 3/8`, `35-3/8`, `35.375"`, `2' 11 3/8"`, `90,5 cm`, `905`.
 *
 * A bare number is in `bareUnit`, except after feet, where it is in inches.
 * Decimal comma and point are the same; thousands separators are refused rather than guessed at.
 */
export function parseLength(text: string, bareUnit: BareUnit): ParsedLength {
  const refuse = (why: string): ParsedLength => ({
    ok: false,
    reason: `${why}; write it like ${LENGTH_EXAMPLES}`,
  });
  let rest = normalise(text);
  if (rest === "") return refuse("no length was given");
  if (rest.length > 60) return refuse("that is too long for a length");
  if (/^[-−]/.test(rest)) return refuse("a length cannot be negative");

  let totalMm = 0;
  let previousUnit: string | undefined;
  while (rest !== "") {
    const match = TERM.exec(rest);
    if (!match) return refuse(`“${text.trim()}” is not a length`);
    const [matched, whole, fraction, bareFraction, decimal, writtenUnit] = match;
    const unit: string = writtenUnit ?? (previousUnit === "ft" ? "in" : bareUnit);
    const value = termValue(whole, fraction ?? bareFraction, decimal);
    if (value === undefined) return refuse(`“${text.trim()}” divides by zero`);
    if (previousUnit !== undefined && !mayFollow(previousUnit, unit)) {
      return refuse(`“${text.trim()}” mixes units that do not go together`);
    }
    totalMm += value * (UNIT_MM[unit] ?? Number.NaN);
    previousUnit = unit;
    rest = rest.slice(matched.length);
  }
  if (!Number.isFinite(totalMm)) return refuse(`“${text.trim()}” is not a length`);
  return { ok: true, lengthMm: totalMm };
}

function termValue(
  whole: string | undefined,
  fraction: string | undefined,
  decimal: string | undefined,
): number | undefined {
  if (decimal !== undefined) return Number(decimal.replace(",", "."));
  const part = fraction === undefined ? undefined : fractionValue(fraction);
  if (part === undefined) return undefined;
  return (whole === undefined ? 0 : Number(whole)) + part;
}

/** Feet then inches, yards then inches, metres then centimetres: larger before smaller, one system. */
function mayFollow(before: string, after: string): boolean {
  const order: Record<string, string[]> = {
    yd: ["ft", "in"],
    ft: ["in"],
    m: ["cm", "mm"],
    cm: ["mm"],
  };
  return order[before]?.includes(after) ?? false;
}
