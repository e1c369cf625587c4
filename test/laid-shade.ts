import { WorkingBook } from "../src/figures/index.ts";
import type { ResolvedShade } from "../src/job/index.ts";
import { measure } from "../src/measure/index.ts";
import type { Size } from "../src/shade-plan/index.ts";
import { STYLE_MODULES } from "../src/styles/index.ts";

/** A shade measured and laid in its style, over a lock that hangs 25 mm below the board. */
export function laidShade(resolved: ResolvedShade) {
  const book = new WorkingBook();
  return lay(resolved, measure(resolved).values, 25, book);
}

/** A shade 900 mm wide and as long as this when finished, however it is mounted, over a lock of 20 mm. */
export function laidAt(finishedLengthMm: number, resolved: ResolvedShade) {
  const size: Size = {
    finishedWidthMm: 900,
    finishedLengthMm,
    boardLengthMm: 890,
    openingWidthMm: 900,
    openingHeightMm: finishedLengthMm,
    widthSpreadMm: 0,
    heightSpreadMm: 0,
    toMeasure: [],
  };
  return lay(resolved, size, 20, new WorkingBook());
}

function lay(resolved: ResolvedShade, size: Size, heightMm: number, book: WorkingBook) {
  const style = STYLE_MODULES[resolved.style];
  const { columns } = style.columns(resolved, size, book);
  const { grid, form, findings } = style.grid(resolved, size, columns, { heightMm, label: "lock" }, book);
  const at = (raise: number) => style.shape({ size, grid, form }, raise);
  return { resolved, size, book, grid, form, findings, at };
}
