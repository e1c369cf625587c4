import type { Form } from "../shade-plan/index.ts";
import type { CelledShade } from "./cell/cell.ts";
import type { SettledCell } from "./cell/settled-cell.ts";
import { spreadOut } from "./flat-cloth.ts";
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
  /** Middle of its bay across the flat cloth, mm. */
  middleMm: number;
}

/**
 * The settled cells side by side, each as often as it stands for a part of the shade, turned over where it is mirrored.
 *
 * @throws where there are no cells to join: a bug
 */
export function joinCells(
  { places }: CelledShade,
  settled: readonly SettledCell[],
  form: Form,
  widthMm: number,
): HangingCloth {
  const uprights: Upright[] = [];
  const onCloth = spreadOut(form, widthMm);
  for (const { cell: index, fromMm, toMm, mirrored } of places) {
    const cell = settled[index] as SettledCell;
    const count = cell.cell.xMm.length;
    // A column behind which cloth is folded away stands once for the cloth at either side of it.
    const isTwice = !mirrored && form.across === "pleated";
    for (let k = uprights.length === 0 || isTwice ? 0 : 1; k < count; k++) {
      const line = mirrored ? count - 1 - k : k;
      const wide = (toMm - fromMm) / (cell.cell.toMm - cell.cell.fromMm || 1);
      const middleMm = onCloth(mirrored ? fromMm : toMm);
      uprights.push({ cell, line, mirrored, shiftMm: mirrored ? toMm : fromMm, wide, middleMm });
    }
  }
  const [left, right] = [uprights[0], uprights.at(-1)];
  if (left === undefined || right === undefined) throw new Error("invalid cells: none");
  const beside = [flatOf(left), widthMm - flatOf(right)] as const;
  // The narrow strips beside the outer columns go with them.
  const all = [
    ...(beside[0] > 1e-6 ? [{ upright: left, byMm: -beside[0] }] : []),
    ...uprights.map((upright) => ({ upright, byMm: 0 })),
    ...(beside[1] > 1e-6 ? [{ upright: right, byMm: beside[1] }] : []),
  ];
  const { lines, strands } = left.cell.grid;
  const across = all.length;
  const placesMm = new Float64Array(3 * across * lines.length);
  const flatMm = new Float64Array(2 * across * lines.length);
  const clothMm = new Float64Array(2 * across * lines.length);
  const top = lines[0]?.fromHemMm ?? 0;
  const hemMm = lines.findLast(({ heldYMm }) => heldYMm !== undefined)?.fromHemMm ?? 0;
  lines.forEach(({ fromHemMm }, j) => {
    const alongMm = top - fromHemMm;
    const inHem = hemMm > 0 ? Math.max(0, hemMm - fromHemMm) / hemMm : 0;
    all.forEach(({ upright, byMm }, i) => {
      const n = j * across + i;
      const [x, y, z] = placeOf(upright, j);
      placesMm.set([x + byMm, y, z], 3 * n);
      flatMm.set([flatOf(upright) + byMm, alongMm], 2 * n);
      const longerMm = upright.cell.cell.longerMm[upright.line] as number;
      clothMm.set([acrossCloth(upright, fromHemMm) + byMm, alongMm + inHem * longerMm], 2 * n);
    });
  });
  return {
    across,
    along: lines.length,
    placesMm,
    flatMm,
    clothMm,
    strands: strandsOf(lines.length, strands),
  };
}

function placeOf({ cell: { cell, x }, line, mirrored, shiftMm, wide }: Upright, j: number) {
  const at = 3 * (j * cell.xMm.length + line);
  const inside = wide * ((x[at] as number) - cell.fromMm);
  return [shiftMm + (mirrored ? -inside : inside), x[at + 1] as number, x[at + 2] as number] as const;
}

function flatOf({ cell: { cell }, mirrored, shiftMm, line, wide }: Upright): number {
  const inside = wide * ((cell.xMm[line] as number) - cell.fromMm);
  return shiftMm + (mirrored ? -inside : inside);
}

/** Cloth across from the middle of the cloth, by way of the middle of the bay, mm. */
function acrossCloth({ cell: { cell }, line, mirrored, middleMm, wide }: Upright, fromHemMm: number): number {
  let besideMm = 0;
  for (let k = line; k + 1 < cell.xMm.length; k++) besideMm += wide * cell.acrossMm(k, fromHemMm);
  return middleMm + (mirrored ? besideMm : -besideMm);
}

function strandsOf(lines: number, strands: readonly { from: number; to: number }[]): Int32Array {
  const found = new Int32Array(lines);
  strands.forEach(({ from, to }, s) => {
    found.fill(s, from, to + 1);
  });
  return found;
}
