import {
  clothLengthText,
  cordLengthText,
  inches,
  MM_PER_FOOT,
  MM_PER_M,
  MM_PER_YARD,
  rulerText,
  SAME_LENGTH_MM,
  type UnitChoice,
} from "../units/index.ts";

/** Running lengths are asked for in eighths of a yard or tenths of a metre where the seller names no step. */
export function clothStepMm(units: UnitChoice): number {
  return units.system === "imperial" ? MM_PER_YARD / 8 : MM_PER_M / 10;
}

/** Cord is asked for in whole feet or tenths of a metre. */
export function cordStepMm(units: UnitChoice): number {
  return units.system === "imperial" ? MM_PER_FOOT : MM_PER_M / 10;
}

/** Cloth and tape are told in yards or metres. */
export function clothUnit(units: UnitChoice): "yd" | "m" {
  return units.system === "imperial" ? "yd" : "m";
}

/** Cord, bars and boards are told in feet or metres. */
export function cutUnit(units: UnitChoice): "ft" | "m" {
  return units.system === "imperial" ? "ft" : "m";
}

/** Millimetres in one of the unit (NIST SP 811: 1 yd = 914.4 mm, 1 ft = 304.8 mm). */
export const UNIT_MM: Record<"yd" | "ft" | "m", number> = { yd: MM_PER_YARD, ft: MM_PER_FOOT, m: MM_PER_M };

/** A length raised to the step in which it is sold, mm. */
export function raisedToStep(lengthMm: number, stepMm: number): number {
  return Math.max(0, Math.ceil((lengthMm - SAME_LENGTH_MM) / stepMm)) * stepMm;
}

/** A running length in its unit, free of binary dust. */
export function inUnit(lengthMm: number, unit: "yd" | "ft" | "m"): number {
  return Math.round((lengthMm / UNIT_MM[unit]) * 1e6) / 1e6;
}

/** What is needed, as exact as a list wants it. */
export function needLengthText(lengthMm: number, unit: "yd" | "ft" | "m", units: UnitChoice): string {
  return unit === "ft" ? cordLengthText(lengthMm, units) : clothLengthText(lengthMm, units);
}

/** What is asked for at the counter: `2 1⁄2 yd`, `46 ft`, `2.3 m`. */
export function boughtLengthText(lengthMm: number, unit: "yd" | "ft" | "m", units: UnitChoice): string {
  const yards = lengthMm / MM_PER_YARD;
  const eighths = Math.abs(yards * 8 - Math.round(yards * 8)) < 1e-6;
  if (unit === "yd" && eighths) return `${rulerText(inches(yards), "1/8 in")}\u00a0yd`;
  return needLengthText(lengthMm, unit, units);
}

/** `1 piece`, `3 pieces`. */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
