import type { ShoppingLine } from "../shade-plan/index.ts";
import {
  clothLengthText,
  cordLengthText,
  MM_PER_FOOT,
  MM_PER_M,
  MM_PER_YARD,
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

/** What is needed or asked for at the counter: `2 1⁄2 yd`, `46 ft`, `2.3 m`. */
export function runningLengthText(lengthMm: number, unit: "yd" | "ft" | "m", units: UnitChoice): string {
  return unit === "ft" ? cordLengthText(lengthMm, units) : clothLengthText(lengthMm, units);
}

/** What a line of running length buys, mm; undefined where it is sold by the piece. */
export function boughtLengthMm({
  quantity,
  unit,
}: Pick<ShoppingLine, "quantity" | "unit">): number | undefined {
  return unit === "yd" || unit === "ft" || unit === "m" ? quantity * UNIT_MM[unit] : undefined;
}
