import type { WorkingBook } from "../figures/index.ts";
import { ringCount } from "../shade-plan/index.ts";
import type { CostInput } from "./cost-input.ts";
import type { Need } from "./need.ts";
import { SUNDRIES } from "./sundries.ts";

/** Sewing thread for seams and rings. */
export function threadNeed({ grid, form }: CostInput, sewMm: number, book: WorkingBook): Need {
  const { threadPerSeam, threadPerRingMm, threadSpoolMm } = SUNDRIES;
  const lengthMm = book.figure("cost.thread", {
    label: "Thread",
    symbol: "Z",
    unit: "mm",
    formula: "t·S + q·n",
    given: {
      t: [threadPerSeam.value, "ratio", "thread for each length of seam"],
      S: [sewMm, "mm", "length of sewing"],
      q: [threadPerRingMm.value, "mm", "thread for each ring"],
      n: [ringCount(grid, form), "count", "rings"],
    },
    cite: threadPerSeam.cite,
    compute: ({ t, S, q, n }) => t * S + q * n,
  });
  return {
    sort: "spooled",
    id: "thread",
    group: "sundries",
    label: "Sewing thread to match the face",
    lengthMm,
    spoolMm: threadSpoolMm.value,
  };
}
