import type { WorkingBook } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { Grid, Size, WovenSleeves } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { inches, upToMark } from "../units/index.ts";

/** Turned in and fastened at either end of a sleeve. */
const SLEEVE_END = sourced(inches(1), "mm", cite("our-choice", "turned in and fastened at either end"));

/** Sleeves of woven tube for cords that the rings grip: from the bottom ring to the board, one on each cord. */
export function wovenSleeves(
  { resolved, size, grid }: { resolved: ResolvedShade; size: Size; grid: Grid },
  book: WorkingBook,
): { wovenSleeves?: WovenSleeves } {
  const count = grid.columns.length;
  if (resolved.rearCords !== "ring-locked" || count === 0) return {};
  const lengthMm = book.figure("rig.woven-sleeve", {
    label: "Woven sleeve on each cord",
    symbol: "v",
    unit: "mm",
    formula: "max(0, L − f − t) + 2·e",
    given: {
      L: [size.finishedLengthMm, "mm", "finished length"],
      f: [grid.rows[0]?.fromHemMm ?? 0, "mm", "hem to the bottom row"],
      t: [resolved.board.thicknessMm, "mm", "thickness of the board"],
      e: [SLEEVE_END.value, "mm", "at either end"],
    },
    cite: cite("geometry", "bottom ring to the underside of the board"),
    compute: ({ L, f, t, e }) => Math.max(0, L - f - t) + 2 * e,
  });
  const cutMm = upToMark(lengthMm, resolved.units.ruler);
  return { wovenSleeves: { count, cutMm, totalMm: count * cutMm } };
}
