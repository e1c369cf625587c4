import { cite, sourced } from "../sources/index.ts";
import { STRETCH_PULL_N } from "./bench-formulas.ts";
import type { Cord } from "./parts.ts";

/** Stretch of braided polyester as it breaks, for a cord whose stretch was not measured. */
export const STRETCH_AT_BREAK = sourced(
  0.12,
  "ratio",
  cite("from-memory", "braided polyester stretches 10 to 15 % before it breaks"),
);

/** Pull that would stretch it to twice its length, EA, N: as measured, else from its strength; undefined for neither. */
export function cordStiffnessN({ stretchAt10N, breakingN }: Cord): number | undefined {
  if (stretchAt10N !== undefined) return STRETCH_PULL_N / stretchAt10N;
  return breakingN === undefined ? undefined : breakingN / STRETCH_AT_BREAK.value;
}
