import type { ColumnStretch } from "../column-stretch.ts";
import type { DrapeCell } from "./cell.ts";
import { type CellGrid, folds } from "./cell-grid.ts";
import { swagShareOf } from "./warp.ts";

/** A fold that has just opened stands out no farther than this at first, mm. */
const MOST_BULGE_MM = 60;

/**
 * A shape to begin with: every line that the rings hold level sinks between them as far as its cloth across and its rise
 * allow, and what is slack between two such lines hangs as a loop. Three numbers a node: across, down, out.
 */
export function firstShape(
  cell: DrapeCell,
  { lines }: CellGrid,
  cloth: readonly ColumnStretch[],
  apartMm: number,
): Float64Array {
  const across = cell.xMm.length;
  const x = new Float64Array(3 * across * lines.length);
  const gathered = cloth.map(
    (one, i) => cloth.slice(i + 1).filter(folds).length * (one.kind === "hem" ? 0 : 1),
  );
  for (let i = 0; i < across; i++) {
    const sunk = cloth.map((one) => sinkAt(cell, i, one));
    lines.forEach(({ stretch, share }, j) => {
      const one = cloth[stretch] as ColumnStretch;
      const at = 3 * (j * across + i);
      const upper = one.upperYMm + (stretch > 0 ? (sunk[stretch - 1] as number) : 0);
      const longer = (cell.longerMm[i] as number) * (one.kind === "hem" ? 1 : 0);
      const arcMm = one.arcMm * swagShare(cell, i, one) + longer;
      const lower = one.lowerYMm === undefined ? upper + arcMm : one.lowerYMm + (sunk[stretch] as number);
      const gapMm = Math.min(arcMm, Math.max(0, lower - upper));
      const [down, out] = loopAt(arcMm, gapMm, share, (gathered[stretch] as number) * 2 * apartMm, apartMm);
      x[at] = cell.xMm[i] as number;
      x[at + 1] = upper + down;
      x[at + 2] = out;
    });
  }
  return x;
}

/** How far the lower end of a stretch hangs below its rings, on one line of the cell, mm. */
function sinkAt(cell: DrapeCell, line: number, { risenMm, fromHemMm }: ColumnStretch): number {
  const { xMm, columns } = cell;
  const x = xMm[line] as number;
  const first = xMm[columns[0] as number] as number;
  if (line < (columns[0] as number)) {
    // A tail turns about its column.
    return Math.min(risenMm, 0.8 * (first - x));
  }
  const middle = columns.length > 1 ? (first + cell.toMm) / 2 : cell.toMm;
  const halfMm = middle - first;
  if (halfMm <= 0) return 0;
  let clothMm = 0;
  for (let i = columns[0] as number; i + 1 < xMm.length && (xMm[i] as number) < middle - 1e-9; i++)
    clothMm += cell.acrossMm(i, fromHemMm[1]);
  const sagMm = Math.min(risenMm, 0.9 * Math.sqrt(Math.max(0, clothMm ** 2 - halfMm ** 2)));
  const share = Math.min(1, Math.abs(x - middle) / halfMm);
  return sagMm * (1 - share * share);
}

function swagShare(cell: DrapeCell, line: number, { arcMm, tapeMm, fromHemMm }: ColumnStretch): number {
  return tapeMm === undefined ? 1 : swagShareOf(cell, line, { clothMm: arcMm, tapeMm }, fromHemMm[1]);
}

/** A loop of cloth at a share of its length: how far down from its upper end, and out. */
function loopAt(
  arcMm: number,
  gapMm: number,
  share: number,
  behindMm: number,
  apartMm: number,
): [number, number] {
  const slack = arcMm - gapMm;
  if (slack < 1e-6) return [gapMm * share, 0];
  const s = arcMm * share;
  const deepest = (arcMm + gapMm) / 2;
  const hanging = s < deepest ? s : 2 * deepest - s;
  const closed = slack / arcMm;
  const down = (1 - closed) * gapMm * share + closed * hanging;
  const bulge = Math.min(MOST_BULGE_MM, (2 / Math.PI) * Math.sqrt(arcMm * slack)) * (1 - closed) + apartMm;
  const out = Math.sin(Math.PI * share) * (behindMm + bulge) + Math.sin(2 * Math.PI * share) * apartMm;
  return [down, out];
}
