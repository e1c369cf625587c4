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
  /** Where its cloth is counted from: a line of its cell, and where that lies across the flat cloth, mm. */
  counted: { line: number; atMm: number };
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
    const isPleated = form.across === "pleated";
    const shiftMm = mirrored ? toMm : fromMm;
    const wide = (toMm - fromMm) / (cell.cell.toMm - cell.cell.fromMm || 1);
    const ofBay = { line: count - 1, atMm: onCloth(mirrored ? fromMm : toMm) };
    const ofEdge = { line: 0, atMm: onCloth(shiftMm) };
    const pleat = isPleated ? (cell.cell.columns[0] as number) : 0;
    // A column behind which cloth is folded away stands once for the cloth at either side of it.
    const lines = [
      ...Array.from({ length: pleat === 0 ? 0 : pleat + 1 }, (_, line) => ({ line, counted: ofEdge })),
      ...Array.from({ length: count - pleat }, (_, k) => ({ line: pleat + k, counted: ofBay })),
    ];
    const isShared = uprights.length > 0 && (mirrored || !isPleated);
    for (const one of (mirrored ? lines.toReversed() : lines).slice(isShared ? 1 : 0))
      uprights.push({ cell, mirrored, shiftMm, wide, ...one });
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
      clothMm.set([acrossCloth(upright, j) + byMm, alongMm + inHem * longerMm], 2 * n);
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

/** Where the cloth of a node lies across from the middle of the cloth, mm. */
function acrossCloth({ cell, line, mirrored, counted, wide }: Upright, j: number): number {
  const [from, to] = [Math.min(line, counted.line), Math.max(line, counted.line)];
  let besideMm = 0;
  for (let k = from; k < to; k++) besideMm += wide * shownMm(cell, k, j);
  return counted.atMm + (line > counted.line !== mirrored ? besideMm : -besideMm);
}

/** Cloth across between a node and the next one: of pleats no more than they let out, the rest is folded away. */
function shownMm({ cell, grid, x }: SettledCell, k: number, j: number): number {
  const clothMm = cell.acrossMm(k, grid.lines[j]?.fromHemMm ?? 0);
  if (cell.across !== "pleated") return clothMm;
  const placeMm = (cell.xMm[k + 1] as number) - (cell.xMm[k] as number);
  const at = 3 * (j * cell.xMm.length + k);
  const apartMm = Math.hypot(...[0, 1, 2].map((c) => (x[at + 3 + c] as number) - (x[at + c] as number)));
  return Math.min(clothMm, Math.max(placeMm, apartMm));
}

function strandsOf(lines: number, strands: readonly { from: number; to: number }[]): Int32Array {
  const found = new Int32Array(lines);
  strands.forEach(({ from, to }, s) => {
    found.fill(s, from, to + 1);
  });
  return found;
}
