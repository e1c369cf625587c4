import { SUM_SLACK_MM } from "./tolerances.ts";

/** What is left of a length after whole steps, from 0 up to one step; a hair to either side of a whole step is none. */
export function remainderMm(lengthMm: number, stepMm: number): number {
  const left = lengthMm - Math.floor(lengthMm / stepMm) * stepMm;
  return left < SUM_SLACK_MM || stepMm - left < SUM_SLACK_MM ? 0 : left;
}
