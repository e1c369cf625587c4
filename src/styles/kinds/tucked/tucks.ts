import { figureRule, type Worked } from "../../../figures/index.ts";
import type { ResolvedMaking } from "../../../job/index.ts";
import { cite } from "../../../sources/index.ts";
import { inches } from "../../../units/index.ts";
import { FINISHED_LENGTH } from "../../base/size-inputs.ts";

/** The published rule takes this off the length before it divides. */
const RULE_OFF_MM = inches(3);
const MOST_TUCKS = 400;

/** Tucks of one shade: how many, and on the finished shade how far apart and how deep, mm. */
export interface Tucks {
  /** As the rule counts them: the last lies on the top line. */
  count: number;
  /** Sewn: all but that one. */
  sewn: number;
  spacingMm: number;
  depthMm: number;
}

const TUCKS = figureRule({
  id: "shape.tucks",
  label: "Tucks",
  symbol: "n",
  unit: "count",
  formula: `min(${MOST_TUCKS}, max(1, floor((L − o) / a + 1 / 2)))`,
  inputs: {
    L: FINISHED_LENGTH,
    o: ["mm", "taken off"],
    a: ["mm", "about from tuck to tuck", "tuck/spacingMm"],
  },
  cite: cite("singer-sewing", "tucks = (L − 3 in) / 3 in"),
  note: "rounded to the nearest whole number; the last one is the top line itself",
  compute: ({ L, o, a }) => Math.min(MOST_TUCKS, Math.max(1, Math.floor((L - o) / a + 1 / 2))),
});

const SPACING = figureRule({
  id: "shape.tuck-spacing",
  label: "Spacing of tucks",
  symbol: "s",
  unit: "mm",
  formula: "L / n",
  inputs: { L: FINISHED_LENGTH, n: ["count", "tucks", "figure:shape.tucks"] },
  cite: cite("singer-sewing", "spacing = length / tucks"),
  compute: ({ L, n }) => L / n,
});

/** Tucks by the published rule: n = (L − 3 in) / 3 in, rounded, L/n apart on the finished shade. */
export function layTucks({ tuck }: Pick<ResolvedMaking, "tuck">, lengthMm: number): Worked<Tucks> {
  const count = TUCKS.figure({ L: lengthMm, o: RULE_OFF_MM, a: tuck.spacingMm });
  const spacing = SPACING.figure({ L: lengthMm, n: count.value });
  return {
    values: {
      count: count.value,
      sewn: count.value - 1,
      spacingMm: spacing.value,
      depthMm: tuck.depthMm,
    },
    workings: [count, spacing],
  };
}
