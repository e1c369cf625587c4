import type { WorkingBook } from "../../figures/index.ts";
import { headYMm, type SpoolCord } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { upToMark } from "../../units/index.ts";
import { cordTotal } from "../cord-sum.ts";
import type { TubeInput } from "./tube-input.ts";
import type { Wound } from "./winding.ts";

/** Every cord: from its bottom ring to the spool above it, with the wraps that stay there. None has a tail. */
export function spoolCords(
  { resolved, size, grid }: TubeInput,
  loadsN: readonly number[],
  { wrapsMm }: Wound,
  book: WorkingBook,
): { cords: SpoolCord[]; totalMm: number } {
  const toTopMm = size.finishedLengthMm - (grid.rows[0]?.fromHemMm ?? 0);
  const { knotsMm } = resolved.making.lift;
  const cords = grid.columns.map(({ number, xMm }, i): SpoolCord => {
    const riseMm = Math.max(0, toTopMm - headYMm(size, xMm));
    const lengthMm = lengthFigure(book, number, riseMm, wrapsMm, knotsMm);
    const loadN = loadsN[i] ?? 0;
    return {
      number,
      columnX: xMm,
      riseMm,
      wrapsMm,
      knotsMm,
      lengthMm,
      cutMm: upToMark(lengthMm, resolved.units.ruler),
      loadN,
      pullN: loadN,
    };
  });
  return { cords, totalMm: cordTotal(book, cords) };
}

function lengthFigure(
  book: WorkingBook,
  number: number,
  riseMm: number,
  wrapsMm: number,
  knotsMm: number,
): number {
  return book.figure(`rig.cord-${number}-length`, {
    label: `Cord ${number}: length`,
    symbol: `c${number}`,
    unit: "mm",
    formula: "y + w + k",
    given: {
      y: [riseMm, "mm", "bottom row to the board above it"],
      w: [wrapsMm, "mm", "wraps that stay on the spool"],
      k: [knotsMm, "mm", "knots and threading"],
    },
    cite: cite("geometry", "rise, wraps and knots"),
    note: "the rise is taken to the top line: board and tube stay as spare",
    compute: ({ y, w, k }) => y + w + k,
  });
}
