import { figureRule, type Worked } from "../figures/index.ts";
import type { WovenSleeves } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { inches, upToMark } from "../units/index.ts";
import type { LiftInput } from "./lift-input.ts";

/** Turned in and fastened at either end of a sleeve. */
const SLEEVE_END = sourced(inches(1), "mm", cite("our-choice", "turned in and fastened at either end"));

const SLEEVE = figureRule({
  id: "rig.woven-sleeve",
  label: "Woven sleeve on each cord",
  symbol: "v",
  unit: "mm",
  formula: "max(0, L − f − t) + 2·e",
  inputs: {
    L: ["mm", "finished length", "figure:measure.finished-length"],
    f: ["mm", "hem to the bottom row", "figure:shape.*"],
    t: ["mm", "thickness of the board", "board/section"],
    e: ["mm", "at either end"],
  },
  restsOn: ["lift/rearCords"],
  cite: cite("geometry", "bottom ring to the underside of the board"),
  compute: ({ L, f, t, e }) => Math.max(0, L - f - t) + 2 * e,
});

/** Sleeves of woven tube for cords that the rings grip: from the bottom ring to the board, one on each cord. */
export function wovenSleeves({
  shade,
  size,
  grid,
}: Pick<LiftInput, "shade" | "size" | "grid">): Worked<{ wovenSleeves?: WovenSleeves }> {
  const count = grid.columns.length;
  if (shade.rearCords !== "ring-locked" || count === 0) return { values: {}, workings: [] };
  const length = SLEEVE.figure({
    L: size.finishedLengthMm,
    f: grid.rows[0]?.fromHemMm ?? 0,
    t: shade.board.thicknessMm,
    e: SLEEVE_END.value,
  });
  const cutMm = upToMark(length.value, shade.units.ruler);
  return { values: { wovenSleeves: { count, cutMm, totalMm: count * cutMm } }, workings: [length] };
}
