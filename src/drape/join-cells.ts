import type { CelledShade } from "./cell/cell.ts";
import type { SettledCell } from "./cell/settle-cell.ts";
import type { HangingCloth } from "./hanging-cloth.ts";

/** Where one upright line of nodes comes from. */
interface Upright {
  cell: SettledCell;
  line: number;
  mirrored: boolean;
  /** Added to its place across; what it lies beside its column. */
  shiftMm: number;
  /** Width of its place over that of the cell. */
  wide: number;
}

/** The settled cells side by side, each as often as it stands for a part of the shade, turned over where it is mirrored. */
export function joinCells(
  { places }: CelledShade,
  settled: readonly SettledCell[],
  widthMm: number,
): HangingCloth {
  const uprights: Upright[] = [];
  for (const { cell: index, fromMm, toMm, mirrored } of places) {
    const cell = settled[index] as SettledCell;
    const count = cell.cell.xMm.length;
    for (let k = uprights.length === 0 ? 0 : 1; k < count; k++) {
      const line = mirrored ? count - 1 - k : k;
      const wide = (toMm - fromMm) / (cell.cell.toMm - cell.cell.fromMm || 1);
      uprights.push({ cell, line, mirrored, shiftMm: mirrored ? toMm : fromMm, wide });
    }
  }
  const placeOf = ({ cell: { cell, x }, line, mirrored, shiftMm, wide }: Upright, j: number) => {
    const at = 3 * (j * cell.xMm.length + line);
    const inside = wide * ((x[at] as number) - cell.fromMm);
    return [shiftMm + (mirrored ? -inside : inside), x[at + 1] as number, x[at + 2] as number] as const;
  };
  const flatOf = ({ cell: { cell }, mirrored, shiftMm, line, wide }: Upright) => {
    const inside = wide * ((cell.xMm[line] as number) - cell.fromMm);
    return shiftMm + (mirrored ? -inside : inside);
  };
  const [left, right] = [uprights[0], uprights.at(-1)];
  if (left === undefined || right === undefined) throw new Error("invalid cells: none");
  const beside = [flatOf(left), widthMm - flatOf(right)];
  // The narrow strips beside the outer columns go with them.
  const strips = beside.map((mm) => (mm > 1e-6 ? 1 : 0));
  const { lines, strands } = left.cell.grid;
  const across = uprights.length + (strips[0] as number) + (strips[1] as number);
  const placesMm = new Float64Array(3 * across * lines.length);
  const flatMm = new Float64Array(2 * across * lines.length);
  const top = lines[0]?.fromHemMm ?? 0;
  lines.forEach(({ fromHemMm }, j) => {
    let i = j * across;
    const put = (place: readonly [number, number, number], flat: number) => {
      placesMm.set(place, 3 * i);
      flatMm.set([flat, top - fromHemMm], 2 * i);
      i++;
    };
    const edge = (upright: Upright, flat: number, by: number) => {
      const [x, y, z] = placeOf(upright, j);
      put([x + by, y, z], flat);
    };
    if (strips[0] === 1) edge(left, 0, -(beside[0] as number));
    for (const upright of uprights) put(placeOf(upright, j), flatOf(upright));
    if (strips[1] === 1) edge(right, widthMm, beside[1] as number);
  });
  return { across, along: lines.length, placesMm, flatMm, strands: strandsOf(lines.length, strands) };
}

function strandsOf(lines: number, strands: readonly { from: number; to: number }[]): Int32Array {
  const found = new Int32Array(lines);
  strands.forEach(({ from, to }, s) => {
    found.fill(s, from, to + 1);
  });
  return found;
}
