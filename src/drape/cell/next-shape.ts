import { keepLengths } from "../../mechanics/index.ts";
import type { DrapeCell } from "./cell.ts";
import type { CellGrid, ClothLine } from "./cell-grid.ts";
import type { SettledCell } from "./settled-cell.ts";
import { warpMm } from "./warp.ts";

/**
 * A shape to begin with from the one at the height before: each line of cloth where it was, moved as far as the rings beside
 * it have moved since, and every upright drawn back to its length.
 */
export function nextShape(cell: DrapeCell, { lines }: CellGrid, before: SettledCell): Float64Array {
  const across = cell.xMm.length;
  const x = new Float64Array(3 * across * lines.length);
  const moved = movedMm(lines, before.grid.lines);
  lines.forEach((line, j) => {
    const [index, share] = placeIn(before.grid.lines, line.fromHemMm);
    for (let i = 0; i < across; i++) {
      const from = 3 * (index * across + i);
      for (let c = 0; c < 3; c++) {
        const [a, b] = [before.x[from + c] as number, before.x[from + 3 * across + c] as number];
        x[3 * (j * across + i) + c] = a + share * (b - a) + (c === 1 ? (moved[j] as number) : 0);
      }
    }
  });
  for (let i = 0; i < across; i++) drawToLength(cell, lines, x, i);
  return x;
}

/** The line above a place of the cloth, and how far it lies towards the next. */
function placeIn(lines: readonly ClothLine[], fromHemMm: number): [index: number, share: number] {
  let index = 0;
  while (index + 2 < lines.length && (lines[index + 1] as ClothLine).fromHemMm > fromHemMm) index++;
  const [a, b] = [lines[index] as ClothLine, lines[index + 1] as ClothLine];
  return [index, Math.min(1, Math.max(0, (a.fromHemMm - fromHemMm) / (a.fromHemMm - b.fromHemMm || 1)))];
}

/** How far down each line goes with the rings above and below it, mm. */
function movedMm(lines: readonly ClothLine[], before: readonly ClothLine[]): Float64Array {
  const moved = new Float64Array(lines.length);
  let from = 0;
  for (let j = 1; j < lines.length; j++) {
    const { heldYMm, fromHemMm } = lines[j] as ClothLine;
    if (heldYMm === undefined) continue;
    const was = before.find((one) => one.heldYMm !== undefined && Math.abs(one.fromHemMm - fromHemMm) < 1e-6);
    moved[j] = heldYMm - (was?.heldYMm ?? heldYMm);
    for (let k = from + 1; k < j; k++)
      moved[k] =
        (moved[from] as number) +
        ((moved[j] as number) - (moved[from] as number)) * ((k - from) / (j - from));
    from = j;
  }
  moved.fill(moved[from] as number, from + 1);
  return moved;
}

function drawToLength(cell: DrapeCell, lines: readonly ClothLine[], x: Float64Array, i: number): void {
  const across = cell.xMm.length;
  const isColumn = cell.columns.includes(i);
  keepLengths({
    x,
    points: Int32Array.from(lines, (_, j) => j * across + i),
    restMm: Float64Array.from(lines.slice(1), (_, j) => warpMm(cell, lines, i, j + 1)),
    held: Uint8Array.from(lines, ({ heldYMm }, j) =>
      j === 0 || (isColumn && heldYMm !== undefined) ? 1 : 0,
    ),
  });
}
