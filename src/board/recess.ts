import type { WorkingBook } from "../figures/index.ts";
import { LOFT, layersThicknessMm, type ResolvedShade } from "../job/index.ts";
import { type Folds, flatSize } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { BoardInput } from "./board-input.ts";

/** Depth of the gathered stack from front to back, mm. */
export function stackDepth(input: BoardInput, book: WorkingBook): number {
  return input.folds === undefined ? thickStack(input, book) : hungStack(input.folds, book);
}

/** As the folds hang: the foremost one, and the hem that they press back. */
function hungStack(folds: Folds, book: WorkingBook): number {
  return book.figure("board.stack-depth", {
    label: "Depth of the raised stack, as sewn",
    symbol: "d",
    unit: "mm",
    formula: "f + h",
    given: {
      f: [folds.outMm, "mm", "folds in front of the flat cloth"],
      h: [folds.behindMm, "mm", "hem pressed back behind it"],
    },
    cite: cite("heavy-elastica", "gathered folds pressed by those in front of them"),
    compute: ({ f, h }) => f + h,
  });
}

/** Where cloth is drawn in both ways nothing better is known than how thick it lies. */
function thickStack({ resolved, size, grid, form }: BoardInput, book: WorkingBook): number {
  const flat = flatSize(size, form, "face");
  const fullness = (flat.widthMm * flat.lengthMm) / (size.finishedWidthMm * size.finishedLengthMm);
  return book.figure("board.stack-depth", {
    label: "Depth of the raised stack",
    symbol: "d",
    unit: "mm",
    formula: "(2·p + 2)·t·k·f",
    given: {
      p: [grid.rows.length, "count", "rows of rings"],
      t: [layersThicknessMm(resolved.cloths), "mm", "thickness of all layers"],
      k: [LOFT.value, "ratio", "loft of gathered folds"],
      f: [fullness, "ratio", "cloth for each area of the shade"],
    },
    cite: LOFT.cite,
    compute: ({ p, t, k, f }) => (2 * p + 2) * t * k * f,
  });
}

/** Depth that an inside mount needs, mm: board, what stands in front of it, and what stands out from the glass. */
export function recessNeeded(
  resolved: ResolvedShade,
  boardDepthMm: number,
  frontMm: number,
  book: WorkingBook,
): number {
  const standsOut = (resolved.opening.obstructions ?? []).reduce(
    (most, o) => Math.max(most, o.projectionMm),
    0,
  );
  return book.figure("board.recess-needed", {
    label: "Depth of recess needed",
    symbol: "r",
    unit: "mm",
    formula: "b + d + o",
    given: {
      b: [boardDepthMm, "mm", "depth of the board"],
      d: [frontMm, "mm", "stack in front of the board"],
      o: [
        standsOut > 0 ? standsOut + resolved.making.mount.handClearanceMm : 0,
        "mm",
        "handles and the like, with their clearance",
      ],
    },
    cite: cite("geometry", "board depth + stack + obstructions"),
    compute: ({ b, d, o }) => b + d + o,
  });
}
