import {
  arealMassText,
  areaText,
  forceText,
  lengthText,
  massText,
  torqueText,
  trimmed,
  type UnitChoice,
} from "../units/index.ts";
import type { FigureUnit } from "./working.ts";

const NBSP = "\u00a0";

/** A figure of a working as a maker reads it. */
export function figureText(value: number, unit: FigureUnit, units: UnitChoice, currency: string): string {
  switch (unit) {
    case "mm":
      return lengthText(value, units);
    case "mm2":
      return areaText(value, units);
    case "g":
      return massText(value / 1000, units);
    case "kg":
      return massText(value, units);
    case "g/m2":
      return arealMassText(value, units);
    case "g/m":
      return `${trimmed(value, 1)}${NBSP}g/m`;
    case "kg/m3":
      return `${trimmed(value, 0)}${NBSP}kg/m³`;
    case "N":
      return forceText(value, units);
    case "Nm":
      return torqueText(value, units);
    case "deg":
      return `${trimmed(value, 1)}°`;
    case "min":
      return `${trimmed(value, 0)}${NBSP}min`;
    case "s":
      return `${trimmed(value, 0)}${NBSP}s`;
    case "money":
      return moneyText(value, currency);
    case "count":
      return trimmed(value, 3);
    case "ratio":
      return trimmed(value, 4);
  }
}

export function moneyText(amount: number, currency: string): string {
  return `${amount.toFixed(2).replace("-", "−")}${NBSP}${currency}`;
}
