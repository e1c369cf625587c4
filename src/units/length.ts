/**
 * Lengths are millimetres inside the program; inches exist only here, in the parser and in text.
 *
 * 1 in = 25.4 mm exactly: NIST SP 811 (2008), appendix B.8, "inch (in)".
 */
export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 304.8;
export const MM_PER_YARD = 914.4;
export const MM_PER_CM = 10;
export const MM_PER_M = 1000;

/** Inches to millimetres, for tables that are published in inches. */
export function inches(valueIn: number): number {
  return valueIn * MM_PER_INCH;
}

/** Centimetres to millimetres, for tables that are published in centimetres. */
export function centimetres(valueCm: number): number {
  return valueCm * MM_PER_CM;
}
