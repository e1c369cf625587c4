import { STYLE_MODULES } from "../styles/index.ts";
import { GRAVITY } from "../units/index.ts";
import { cellsOf } from "./cell/cell.ts";
import type { HemLoad } from "./cell/cell-net.ts";
import { settleCell } from "./cell/settle-cell.ts";
import { columnCloth } from "./column-cloth.ts";
import type { DrapeInput } from "./drape-input.ts";
import { gathered } from "./gathers.ts";
import type { HangingShade } from "./hanging-cloth.ts";
import { joinCells } from "./join-cells.ts";
import { loft } from "./loft.ts";
import { isShirred, shirred } from "./shirred.ts";

/**
 * The cloth of a shade anywhere between lowered (0) and raised (1). Where its section is the same all across it is drawn
 * out over the width; where it hangs in swags, a net of it is brought to rest (`settleCell`), one cell for all alike.
 */
export function drapeShade(input: DrapeInput, raise: number): HangingShade {
  const { style, size, grid, form, folds, foldDepthMm } = input;
  const { section } = STYLE_MODULES[style].shape(
    {
      ...{ size, grid, form },
      ...(foldDepthMm === undefined ? {} : { foldDepthMm }),
      ...(folds === undefined ? {} : { hang: folds.cloth }),
    },
    raise,
  );
  const ringsMm: HangingShade["ringsMm"] = section.rows.flatMap(({ yMm }) =>
    grid.columns.map(({ xMm }): [number, number, number] => [xMm, yMm, 0]),
  );
  const lowestMm = section.rows[0]?.yMm ?? 0;
  const cordsMm: HangingShade["cordsMm"] = grid.columns.map(({ xMm }) => ({
    from: [xMm, lowestMm, 0],
    to: [xMm, input.board.thicknessMm, 0],
  }));
  if (folds !== undefined) {
    return { cloth: loft(input, section), method: "section", sinkMm: 0, ringsMm, cordsMm };
  }
  if (isShirred(form)) {
    return { cloth: shirred(input, section), method: "laid", sinkMm: 0, ringsMm, cordsMm };
  }
  const celled = cellsOf(form, grid, size.finishedWidthMm);
  const cloth = columnCloth(form, grid, section);
  const bar = hemLoad(input);
  const settled = celled.cells.map((cell) => settleCell(cell, cloth, input.feel, input.board.depthMm, bar));
  const joined = joinCells(celled, settled, size.finishedWidthMm);
  return {
    cloth: form.across === "gathered" ? gathered(joined, form.swags) : joined,
    method: settled.every((one) => one.settled) ? "settled" : "unsettled",
    sinkMm: Math.max(...settled.map(({ sinkMm }) => sinkMm)),
    ringsMm,
    cordsMm,
  };
}

/** A bar along the very hem; a rod at the rings hangs from them, and the cloth does not feel it. */
function hemLoad({ form: { bar }, mass }: DrapeInput): HemLoad | undefined {
  if (bar === undefined || bar.aboveHemMm !== undefined || bar.toMm <= bar.fromMm) return undefined;
  const barKg = mass.parts.reduce((sum, { part, massKg }) => sum + (part === "bar" ? massKg : 0), 0);
  return { weightNPerMm: (barKg * GRAVITY) / (bar.toMm - bar.fromMm), fromMm: bar.fromMm, toMm: bar.toMm };
}
