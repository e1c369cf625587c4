import type { HalfDropRule, Repeat } from "../job/index.ts";
import { FIT_SLACK } from "../units/index.ts";

/** Cut length raised to whole repeats, never down: The Encyclopaedia of Curtains, pp. 116–119. */
export function repeatLengthMm(cutLengthMm: number, verticalMm: number): number {
  return Math.ceil(cutLengthMm / verticalMm - FIT_SLACK) * verticalMm;
}

/**
 * What a half drop asks for beyond widths × repeat length, mm.
 *
 * - `whole-repeat-per-order`: one whole repeat, half to place the motif and half for the drop
 *   (“Half drop”, “Half drop repeat”).
 * - `half-repeat-if-needed`: half a repeat, or nothing where rounding up already left as much
 *   (“Half drop pattern repeats”).
 */
export function halfDropExtraMm(
  repeat: Repeat,
  cutLengthMm: number,
  drops: number,
  rule: HalfDropRule,
): number {
  if (repeat.match !== "half-drop" || drops < 2) return 0;
  if (rule === "whole-repeat-per-order") return repeat.verticalMm;
  const spareMm = repeatLengthMm(cutLengthMm, repeat.verticalMm) - cutLengthMm;
  return spareMm >= repeat.verticalMm / 2 - FIT_SLACK ? 0 : repeat.verticalMm / 2;
}
