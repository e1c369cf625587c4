import { type Figure, figureRuleOf, type Worked } from "../../figures/index.ts";
import type { SpoolCord } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { upToMark } from "../../units/index.ts";
import { CORD_INPUTS, CORD_LENGTH, type OfCord } from "../cord-length-rule.ts";
import { cordTotal } from "../cord-sum.ts";
import type { TubeInput } from "../lift-input.ts";
import { riseOf } from "../rise-of.ts";
import type { Wound } from "./winding.ts";

const LENGTH = figureRuleOf<OfCord>()({
  ...CORD_LENGTH,
  formula: "y + w + k",
  inputs: {
    y: CORD_INPUTS.y,
    w: ["mm", "wraps that stay on the spool", "lift/tube", "figure:rig.wraps-left"],
    k: CORD_INPUTS.k,
  },
  cite: cite("geometry", "rise, wraps and knots"),
  note: "the rise is taken to the top line: board and tube stay as spare",
  compute: ({ y, w, k }) => y + w + k,
});

/** Every cord: from its bottom ring to the spool above it, with the wraps that stay there. None has a tail. */
export function spoolCords(
  { shade, size, grid }: Pick<TubeInput, "shade" | "size" | "grid">,
  loadsN: readonly number[],
  { wrapsMm }: Wound,
): Worked<{ cords: SpoolCord[]; totalMm: number }> {
  const bottom = grid.rows[0];
  const { knotsMm } = shade.making.lift;
  const lengths: Figure[] = [];
  const cords = grid.columns.map(({ number, xMm }, i): SpoolCord => {
    const riseMm = riseOf(bottom, size, xMm);
    const length = LENGTH.figure({ y: riseMm, w: wrapsMm, k: knotsMm }, { cord: number });
    lengths.push(length);
    const loadN = loadsN[i] ?? 0;
    return {
      number,
      columnX: xMm,
      riseMm,
      wrapsMm,
      knotsMm,
      lengthMm: length.value,
      cutMm: upToMark(length.value, shade.units.ruler),
      loadN,
      pullN: loadN,
    };
  });
  const total = cordTotal(cords);
  return { values: { cords, totalMm: total.value }, workings: [...lengths, total] };
}
