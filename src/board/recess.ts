import type { WorkingBook } from "../account/index.ts";
import type { Brief, Cloth } from "../job/index.ts";
import type { Grid } from "../shade/index.ts";
import { cite, sourced } from "../sources/index.ts";

/** How far gathered folds stand off each other, over their bare thickness. */
const LOFT = sourced(2, "ratio", cite("from-memory", "1.5 to 2; the looser taken"));
/** Where a cloth's thickness was not given: mass over this density. */
const CLOTH_DENSITY = sourced(450, "kg/m3", cite("from-memory", "woven cotton, loosely"));

function thicknessMm(cloth: Cloth | undefined): number {
  if (cloth === undefined) return 0;
  return cloth.thicknessMm ?? cloth.massGsm / CLOTH_DENSITY.value;
}

/** Depth of the gathered stack from front to back, mm. */
export function stackDepth(brief: Brief, grid: Grid, book: WorkingBook): number {
  const { face, interlining, blackout, lining } = brief.cloths;
  const layersMm = [face, interlining, blackout, lining].reduce((sum, cloth) => sum + thicknessMm(cloth), 0);
  return book.figure("board.stack-depth", {
    label: "Depth of the raised stack",
    symbol: "d",
    unit: "mm",
    formula: "(2·p + 2)·t·k",
    given: {
      p: [grid.rows.length, "count", "rows of rings"],
      t: [layersMm, "mm", "thickness of all layers"],
      k: [LOFT.value, "ratio", "loft of gathered folds"],
    },
    cite: LOFT.cite,
    reckon: ({ p, t, k }) => (2 * p + 2) * t * k,
  });
}

/** Depth that an inside mount needs, mm: board, stack, and what stands out from the glass. */
export function recessNeeded(brief: Brief, boardDepthMm: number, stackMm: number, book: WorkingBook): number {
  const standsOut = (brief.opening.obstructions ?? []).reduce((most, o) => Math.max(most, o.projectionMm), 0);
  return book.figure("board.recess-needed", {
    label: "Depth of recess needed",
    symbol: "r",
    unit: "mm",
    formula: "b + d + o",
    given: {
      b: [boardDepthMm, "mm", "depth of the board"],
      d: [stackMm, "mm", "depth of the stack"],
      o: [
        standsOut > 0 ? standsOut + brief.making.mount.handClearanceMm : 0,
        "mm",
        "handles and the like, with their clearance",
      ],
    },
    cite: cite("geometry", "board depth + stack + obstructions"),
    reckon: ({ b, d, o }) => b + d + o,
  });
}
