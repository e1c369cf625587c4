import type { ResolvedMaking } from "../../job/index.ts";
import type { Form, Grid, Size } from "../../shade-plan/index.ts";
import { plainForm } from "../base/plain-form.ts";

/** Form of a flat or ribbed shade: with its ribs, and the rail of one that comes down. */
export function flatForm(
  shade: { making: Pick<ResolvedMaking, "board" | "fold" | "ribs"> },
  size: Pick<Size, "finishedWidthMm">,
  grid: Grid,
): Form {
  return {
    ...plainForm(shade, size, grid),
    ribs: ribsOf(shade.making, grid),
    haberdashery: topRail(shade.making, size.finishedWidthMm),
  };
}

/** A shade whose top comes down hangs from a rail in place of the board. */
function topRail(
  { fold, board }: Pick<ResolvedMaking, "fold" | "board">,
  widthMm: number,
): Form["haberdashery"] {
  const lengthMm = widthMm - board.barShorterMm;
  return fold.topDropMm > 0 && lengthMm > 0
    ? [{ id: "top-rail", label: "Top rail, a stiff flat bar", count: 1, lengthMm }]
    : [];
}

/** Ribs as they were asked for: at every row, and midway between two rows where every half fold has one. */
function ribsOf({ ribs }: Pick<ResolvedMaking, "ribs">, grid: Grid): Form["ribs"] {
  if (ribs.kind === "none") return { rows: [], face: "back" };
  const rows = grid.rows.map(({ number }) => number);
  return {
    rows,
    face: ribs.face,
    ...(ribs.at === "half-folds" ? { between: rows } : {}),
    ...(ribs.kind === "bare" ? { bare: true as const } : {}),
  };
}
