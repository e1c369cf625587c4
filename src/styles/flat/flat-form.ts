import type { Brief } from "../../job/index.ts";
import type { Form, Grid, Size } from "../../shade/index.ts";

/** Form of a shade that is a plain rectangle with rings: nothing added, a straight bar, cords at the columns. */
export function flatForm({ making, style }: Brief, size: Size, grid: Grid): Form {
  const width = size.finishedWidthMm;
  const inMm = Math.min(making.board.barShorterMm, width) / 2;
  return {
    stretches: plainStretches(grid),
    allowances: [],
    across: "flat",
    pleats: [],
    swags: [],
    bar: { fromMm: inMm, toMm: width - inMm },
    ribs: ribsOf(making, grid),
    marks: [],
    joinsAtMm: grid.columns.map(({ xMm }) => xMm),
    haberdashery: topRail({ making, style }, width),
  };
}

/** A shade whose top comes down hangs from a rail in place of the board. */
function topRail({ making, style }: Pick<Brief, "making" | "style">, widthMm: number): Form["haberdashery"] {
  const wanted = making.fold.topDropMm > 0 && (style === "flat" || style === "ribbed");
  const lengthMm = Math.max(0, widthMm - making.board.barShorterMm);
  return wanted && lengthMm > 0
    ? [{ id: "top-rail", label: "Top rail, a stiff flat bar", count: 1, lengthMm }]
    : [];
}

/** Ribs as they were asked for: at every row, and midway between two rows where every half fold has one. */
function ribsOf({ ribs }: Brief["making"], grid: Grid): Form["ribs"] {
  if (ribs.kind === "none") return { rows: [], face: "back" };
  const rows = grid.rows.map(({ number }) => number);
  return {
    rows,
    face: ribs.face,
    ...(ribs.at === "half-folds" ? { between: rows } : {}),
    ...(ribs.kind === "bare" ? { bare: true as const } : {}),
  };
}

/** As much cloth as cord in every stretch. */
export function plainStretches(grid: Grid): Form["stretches"] {
  return [
    { row: 0, cordMm: grid.bottomSectionMm, clothMm: grid.bottomSectionMm },
    ...grid.rows.map(({ number, yMm }, i) => {
      const mm = yMm - (grid.rows[i + 1]?.yMm ?? 0);
      return { row: number, cordMm: mm, clothMm: mm };
    }),
  ];
}
