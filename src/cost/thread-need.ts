import { type Figure, figureRule } from "../figures/index.ts";
import type { NeedsInput } from "./cost-input.ts";
import { ringsSewn } from "./existing-needs.ts";
import type { Need } from "./need.ts";
import { SUNDRIES } from "./sundries.ts";

const THREAD = figureRule({
  id: "cost.thread",
  label: "Thread",
  symbol: "Z",
  unit: "mm",
  formula: "t·S + q·n",
  inputs: {
    t: ["ratio", "thread for each length of seam"],
    S: ["mm", "length of sewing", "figure:cost.sewn"],
    q: ["mm", "thread for each ring"],
    n: ["count", "rings", "figure:shape.*"],
  },
  cite: SUNDRIES.threadPerSeam.cite,
  compute: ({ t, S, q, n }) => t * S + q * n,
});

/** Sewing thread for seams and rings, mm. */
export function threadLength(input: NeedsInput, sewnMm: number): Figure {
  const { threadPerSeam, threadPerRingMm } = SUNDRIES;
  return THREAD.figure({
    t: threadPerSeam.value,
    S: sewnMm,
    q: threadPerRingMm.value,
    n: ringsSewn(input),
  });
}

/** The same as it is bought. */
export function threadNeed(lengthMm: number): Need {
  return {
    sort: "spooled",
    id: "thread",
    group: "sundries",
    label: "Sewing thread to match the face",
    lengthMm,
    spoolMm: SUNDRIES.threadSpoolMm.value,
  };
}
