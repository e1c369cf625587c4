import type { ResolvedMaking } from "../../job/index.ts";
import type { Form, Grid, Size } from "../../shade-plan/index.ts";

/** Form of a plain rectangle with rings: nothing added, a straight bar, cords at the columns. */
export function plainForm(
  { making }: { making: Pick<ResolvedMaking, "board"> },
  size: Pick<Size, "finishedWidthMm">,
  grid: Grid,
): Form {
  const width = size.finishedWidthMm;
  const inMm = Math.min(making.board.barShorterMm, width) / 2;
  return {
    stretches: plainStretches(grid),
    allowances: [],
    across: "flat",
    pleats: [],
    swags: [],
    bar: { fromMm: inMm, toMm: width - inMm },
    ribs: { rows: [], face: "back" },
    marks: [],
    joinsAtMm: grid.columns.map(({ xMm }) => xMm),
    haberdashery: [],
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
