import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { inches } from "../../units/index.ts";

/** The published rule takes this off the length before it divides. */
const RULE_OFF_MM = inches(3);
const MOST_TUCKS = 400;

export interface Tucks {
  /** As the rule counts them: the last lies on the top line. */
  count: number;
  /** Sewn: all but that one. */
  sewn: number;
  spacingMm: number;
  depthMm: number;
}

/** Tucks by the published rule: n = (L − 3 in) / 3 in, rounded, L/n apart on the finished shade. */
export function layTucks(resolved: ResolvedShade, lengthMm: number, book: WorkingBook): Tucks {
  const { tuck } = resolved.making;
  const count = book.figure("shape.tucks", {
    label: "Tucks",
    symbol: "n",
    unit: "count",
    formula: `min(${MOST_TUCKS}, max(1, floor((L − o) / a + 1 / 2)))`,
    given: {
      L: [lengthMm, "mm", "finished length"],
      o: [RULE_OFF_MM, "mm", "taken off"],
      a: [tuck.spacingMm, "mm", "about from tuck to tuck"],
    },
    cite: cite("singer-sewing", "tucks = (L − 3 in) / 3 in"),
    note: "rounded to the nearest whole number; the last one is the top line itself",
    compute: ({ L, o, a }) => Math.min(MOST_TUCKS, Math.max(1, Math.floor((L - o) / a + 1 / 2))),
  });
  const spacingMm = book.figure("shape.tuck-spacing", {
    label: "Spacing of tucks",
    symbol: "s",
    unit: "mm",
    formula: "L / n",
    given: { L: [lengthMm, "mm", "finished length"], n: [count, "count", "tucks"] },
    cite: cite("singer-sewing", "spacing = length / tucks"),
    compute: ({ L, n }) => L / n,
  });
  return { count, sewn: count - 1, spacingMm, depthMm: tuck.depthMm };
}
