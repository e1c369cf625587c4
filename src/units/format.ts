import { MM_PER_FOOT, MM_PER_INCH, MM_PER_M, MM_PER_YARD } from "./length.ts";
import { GSM_PER_OZ_YD2, KG_PER_POUND, N_PER_POUND_FORCE, NM_PER_POUND_FORCE_INCH } from "./mass.ts";
import type { BareUnit } from "./parse-length.ts";
import { nearestMark, type Ruler } from "./ruler.ts";

export const UNIT_SYSTEMS = ["imperial", "metric"] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

/** How a maker reads numbers: the system and the finest mark of the ruler at hand. */
export interface UnitChoice {
  system: UnitSystem;
  ruler: Ruler;
}

/** The unit in which a bare number is read and short lengths are shown. */
export function bareUnit(units: UnitChoice): BareUnit {
  return units.ruler === "1 mm" ? "mm" : "in";
}

const NBSP = "\u00a0";
const FRACTION_SLASH = "⁄";

/** Of whole numbers, neither below 0. */
export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** Whole inches and a reduced fraction on the given number of parts: `35 3⁄8`. */
function inchText(marks: number, partsPerInch: number): string {
  const sign = marks < 0 ? "−" : "";
  const size = Math.abs(marks);
  const whole = Math.floor(size / partsPerInch);
  const part = size % partsPerInch;
  if (part === 0) return `${sign}${whole}`;
  const divisor = greatestCommonDivisor(part, partsPerInch);
  const fraction = `${part / divisor}${FRACTION_SLASH}${partsPerInch / divisor}`;
  return whole === 0 ? `${sign}${fraction}` : `${sign}${whole}${NBSP}${fraction}`;
}

/**
 * A length on the ruler, without its unit: `35 3⁄8` or `898`.
 * Rounds to the nearest mark; give it absolute positions.
 */
export function rulerText(lengthMm: number, ruler: Ruler): string {
  const marks = nearestMark(lengthMm, ruler);
  if (ruler === "1 mm") return `${marks < 0 ? "−" : ""}${Math.abs(marks)}`;
  return inchText(marks, ruler === "1/16 in" ? 16 : 8);
}

/**
 * What is smaller than a ruler shows: thousandths of an inch, or hundredths of a millimetre. What comes to an inch and more
 * all the same is told by the ruler: nobody reads 541.037 in.
 */
export function smallLengthText(lengthMm: number, units: UnitChoice): string {
  if (Math.abs(lengthMm) >= MM_PER_INCH)
    return `${rulerText(lengthMm, units.ruler)}${NBSP}${bareUnit(units)}`;
  return bareUnit(units) === "in"
    ? `${trimmed(lengthMm / MM_PER_INCH, 3)}${NBSP}in`
    : `${trimmed(lengthMm, 2)}${NBSP}mm`;
}

/** A length with its unit as the maker reads it: `35 3⁄8 in` or `898 mm`; what is there is never told as nought. */
export function lengthText(lengthMm: number, units: UnitChoice): string {
  if (nearestMark(lengthMm, units.ruler) === 0) return smallLengthText(lengthMm, units);
  return `${rulerText(lengthMm, units.ruler)}${NBSP}${bareUnit(units)}`;
}

/** A length as it stands in an input: plain characters, so that parsing it gives the same mark. */
export function lengthInputText(lengthMm: number, units: UnitChoice): string {
  return rulerText(lengthMm, units.ruler).replaceAll(FRACTION_SLASH, "/").replaceAll(NBSP, " ");
}

/** Thickness of cord, bar or gap: tenths of a millimetre in either system, as hardware is sold. */
export function fineText(lengthMm: number): string {
  return `${trimmed(lengthMm, 2)}${NBSP}mm`;
}

/** A hair over an eighth of a yard is that eighth, mm. */
const EIGHTH_SLACK_MM = 0.05;

/**
 * Cloth by the running length: eighths of a yard, metres to two places. What is needed or bought is never told as less
 * than it is (`up`), what is at hand never as more (`down`).
 */
export function clothLengthText(lengthMm: number, units: UnitChoice, rounded: "up" | "down" = "up"): string {
  if (units.system === "metric") return `${trimmed(lengthMm / MM_PER_M, 2)}${NBSP}m`;
  const size = Math.abs(lengthMm) / (MM_PER_YARD / 8);
  const slack = EIGHTH_SLACK_MM / (MM_PER_YARD / 8);
  const eighths = rounded === "up" ? Math.ceil(size - slack) : Math.floor(size + slack);
  return `${inchText(Math.sign(lengthMm) * Math.max(0, eighths), 8)}${NBSP}yd`;
}

/** A hair over a whole inch is that inch, mm. */
const INCH_SLACK_MM = 0.05;

/** Cord by the running length: feet and whole inches, or metres to two places; never told as less than it is. */
export function cordLengthText(lengthMm: number, units: UnitChoice): string {
  if (units.system === "metric") return `${trimmed(lengthMm / MM_PER_M, 2)}${NBSP}m`;
  const whole = Math.max(0, Math.ceil((lengthMm - INCH_SLACK_MM) / MM_PER_INCH));
  const [feet, inches] = [Math.floor(whole / 12), whole % 12];
  const parts = [...(feet > 0 ? [`${feet}${NBSP}ft`] : []), ...(inches > 0 ? [`${inches}${NBSP}in`] : [])];
  return parts.length === 0 ? `0${NBSP}ft` : parts.join(NBSP);
}

/** A bar, board or tube as it is sold: whole feet as feet, any other length by the ruler; or metres to two places. */
export function soldLengthText(lengthMm: number, units: UnitChoice): string {
  const feet = lengthMm / MM_PER_FOOT;
  const isWhole = Math.abs(feet - Math.round(feet)) * MM_PER_FOOT < INCH_SLACK_MM;
  return units.system === "metric" || isWhole ? cordLengthText(lengthMm, units) : lengthText(lengthMm, units);
}

/** Decimals beyond which two numbers are one. */
const FINEST = 9;

export function massText(massKg: number, units: UnitChoice, decimals = 2): string {
  if (units.system === "imperial") return `${trimmed(massKg / KG_PER_POUND, decimals)}${NBSP}lb`;
  // What rounds to a kilogram is told as one.
  return Number(massKg.toFixed(decimals + 1)) < 1
    ? `${trimmed(massKg * 1000, decimals - 2)}${NBSP}g`
    : `${trimmed(massKg, decimals)}${NBSP}kg`;
}

/** Whether what is stated must not be gone over, or not under. */
type LimitSide = "most" | "least";

/** What a converted number may be off by its last bits and still be the round one that its maker stated. */
const CONVERTED = 1e-6;

/**
 * A limit that a maker states, as it is spoken: tenths of a pound, hundredths of a kilogram, whole grams, and never told as
 * wider than it is: 6.8 kg are 14.99 lb, of which 14.9 lb may be hung.
 */
export function massLimitText(limitKg: number, units: UnitChoice, side: LimitSide, finer = 0): string {
  const isPounds = units.system === "imperial";
  const places = (isPounds ? 1 : 2) + finer;
  const per = isPounds ? KG_PER_POUND : 1;
  const step = 10 ** (isPounds || limitKg >= 1 ? places : places + 1);
  const inSteps = (limitKg / per) * step;
  const whole = side === "most" ? Math.floor(inSteps + CONVERTED) : Math.ceil(inSteps - CONVERTED);
  return massText((whole / step) * per, units, places);
}

/** A limit, and a mass that is over or under it, told as finely as it takes to tell them apart. */
export function massTextsApart(
  limitKg: number,
  massKg: number,
  units: UnitChoice,
  side: LimitSide,
): [limit: string, mass: string] {
  for (let finer = 0; ; finer++) {
    const texts: [string, string] = [
      massLimitText(limitKg, units, side, finer),
      massText(massKg, units, 2 + finer),
    ];
    if (texts[0] !== texts[1] || limitKg === massKg || finer === FINEST - 2) return texts;
  }
}

export function forceText(forceN: number, units: UnitChoice): string {
  const newtons = `${trimmed(forceN, 1)}${NBSP}N`;
  return units.system === "imperial"
    ? `${poundForce(forceN / N_PER_POUND_FORCE)}${NBSP}lbf (${newtons})`
    : newtons;
}

/** A tenth of a pound is half a newton: what is less has another place, so that it is not told as none. */
function poundForce(pounds: number): string {
  return trimmed(pounds, Math.abs(pounds) < 0.1 ? 2 : 1);
}

/** Torque; the inch-pound beside it for makers who read inches. */
export function torqueText(torqueNm: number, units: UnitChoice): string {
  const newtonMetres = `${trimmed(torqueNm, 2)}${NBSP}N·m`;
  return units.system === "imperial"
    ? `${trimmed(torqueNm / NM_PER_POUND_FORCE_INCH, 1)}${NBSP}lbf·in (${newtonMetres})`
    : newtonMetres;
}

export function arealMassText(massGsm: number, units: UnitChoice): string {
  return units.system === "imperial"
    ? `${trimmed(massGsm / GSM_PER_OZ_YD2, 1)}${NBSP}oz/yd²`
    : `${trimmed(massGsm, 0)}${NBSP}g/m²`;
}

export function areaText(areaMm2: number, units: UnitChoice): string {
  return units.system === "imperial"
    ? `${trimmed(areaMm2 / MM_PER_FOOT ** 2, 2)}${NBSP}ft²`
    : `${trimmed(areaMm2 / 1e6, 2)}${NBSP}m²`;
}

/** A number with at most so many decimals and no trailing zeros; a true minus sign. */
export function trimmed(value: number, decimals: number): string {
  const fixed = value.toFixed(decimals);
  const text = fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  return text === "-0" ? "0" : text.replace("-", "−");
}

/** The ruler used where only one of inches and millimetres can be meant. */
export const SYSTEM_DEFAULT_RULER: Record<UnitSystem, Ruler> = {
  imperial: "1/8 in",
  metric: "1 mm",
};
