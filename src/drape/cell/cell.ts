import type { Form, Grid } from "../../shade-plan/index.ts";
import { easeBetween, hasTails } from "../../styles/index.ts";

/**
 * A part of the shade that stands for others like it: from its left end, which is a free edge of the shade or a column
 * between two bays alike, to the middle of a bay, where its mirror image goes on.
 */
export interface DrapeCell {
  fromMm: number;
  toMm: number;
  left: "edge" | "mirror";
  /** Finished places of its upright lines of nodes, mm from the left edge of the shade. */
  xMm: Float64Array;
  /** Which of them are columns. */
  columns: number[];
  /** Cloth across from each line to the next, at a height above the hem along the cloth, mm. */
  acrossMm: (line: number, fromHemMm: number) => number;
  /** Gathers and pleats open without a push. */
  across: Form["across"];
  /** How much longer the cloth of each line is than at the columns, mm: a hem that is cut in a curve. */
  longerMm: Float64Array;
}

/** Bays of one shade, each with the cell that stands for it. */
export interface CelledShade {
  cells: DrapeCell[];
  /** From the left: which cell, where it lies, and whether it is turned over. */
  places: { cell: number; fromMm: number; toMm: number; mirrored: boolean }[];
}

/** Lines of nodes across half a bay: fewer where many bays, or gathers within them, are seen at once. */
const LEAST_HALF_BAY = 4;
const FEWEST_HALF_BAY = 2;
const MANY_BAYS = 12;
const MOST_HALF_BAY = 6;
/** Bays that differ more often than this are taken like the last of them, drawn to their width. */
const MOST_CELLS = 4;
const LINES_OF_BAYS = { plain: 26, gathered: 18 };
/** Across half a shade that is held at its sides, and across a strip beside the outer column. */
const LINES_HALF_SHADE = 6;
const LINES_TAIL = 3;
const NARROW_MM = 80;

/** Shades held at the sides are solved by their left half; others by one half bay of each kind. */
export function cellsOf(form: Form, grid: Grid, widthMm: number): CelledShade {
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  if (hasTails(form, widthMm) || columnsMm.length <= 2) {
    const cell = halfShade(form, columnsMm, widthMm);
    return {
      cells: [cell],
      places: [
        { cell: 0, fromMm: 0, toMm: widthMm / 2, mirrored: false },
        { cell: 0, fromMm: widthMm / 2, toMm: widthMm, mirrored: true },
      ],
    };
  }
  const bays = columnsMm.length - 1;
  const wanted = LINES_OF_BAYS[form.across === "gathered" ? "gathered" : "plain"] / bays;
  const lines = Math.max(
    bays > MANY_BAYS ? FEWEST_HALF_BAY : LEAST_HALF_BAY,
    Math.min(MOST_HALF_BAY, Math.round(wanted)),
  );
  const cells: DrapeCell[] = [];
  const places: CelledShade["places"] = [];
  const known = new Map<string, number>();
  for (let i = 0; i + 1 < columnsMm.length; i++) {
    const [fromMm, toMm] = [columnsMm[i] as number, columnsMm[i + 1] as number];
    const cloth = (fromHemMm: number) => clothAcross(form, fromMm, toMm, fromHemMm);
    // Bays that differ by less than a hair of the maker's ruler hang alike.
    const key = [toMm - fromMm, cloth(0), cloth(300)].map((mm) => mm.toFixed(0)).join();
    const index =
      known.get(key) ??
      (cells.length < MOST_CELLS ? cells.push(halfBay(form, fromMm, toMm, lines)) : cells.length) - 1;
    known.set(key, index);
    const middle = (fromMm + toMm) / 2;
    places.push({ cell: index, fromMm, toMm: middle, mirrored: false });
    places.push({ cell: index, fromMm: middle, toMm, mirrored: true });
  }
  return { cells, places };
}

/** Cloth between two columns, at a height above the hem along the cloth, mm. */
export function clothAcross(form: Form, fromMm: number, toMm: number, fromHemMm: number): number {
  const middle = (fromMm + toMm) / 2;
  const swag = form.swags.find((one) => one.fromMm < middle && middle < one.toMm);
  if (form.across === "gathered" && swag !== undefined) return swag.arcMm;
  return toMm - fromMm + easeBetween(form, fromMm, toMm, fromHemMm);
}

function halfBay(form: Form, fromMm: number, toMm: number, lines: number): DrapeCell {
  const middle = (fromMm + toMm) / 2;
  const xMm = Float64Array.from({ length: lines + 1 }, (_, i) => fromMm + ((middle - fromMm) * i) / lines);
  return {
    across: form.across,
    ...{ fromMm, toMm: middle, left: "mirror", xMm, columns: [0] },
    acrossMm: (_, fromHemMm) => clothAcross(form, fromMm, toMm, fromHemMm) / (2 * lines),
    longerMm: new Float64Array(xMm.length),
  };
}

function halfShade(form: Form, columnsMm: readonly number[], widthMm: number): DrapeCell {
  const middle = widthMm / 2;
  const first = columnsMm[0] ?? 0;
  const second = columnsMm.find((x) => x > first + 1) ?? widthMm - first;
  const tail = first > NARROW_MM ? LINES_TAIL : first > 0 ? 2 : 0;
  const centred = Math.abs(second - middle) < 1;
  const xs = Array.from({ length: tail }, (_, i) => (first * i) / tail);
  for (let i = 0; i <= LINES_HALF_SHADE; i++) xs.push(first + ((middle - first) * i) / LINES_HALF_SHADE);
  const xMm = Float64Array.from(xs);
  const spanMm = second - first;
  const acrossMm = (line: number, fromHemMm: number) => {
    const width = (xMm[line + 1] as number) - (xMm[line] as number);
    if (line < tail) return (width * clothAcross(form, 0, first, fromHemMm)) / first;
    return (width * clothAcross(form, first, second, fromHemMm)) / spanMm;
  };
  return {
    across: form.across,
    ...{ fromMm: 0, toMm: middle, left: "edge", xMm, acrossMm },
    columns: centred ? [tail, xMm.length - 1] : [tail],
    longerMm: xMm.map((x) => dipAt(form, x)),
  };
}

/** How far a hem that is cut in a curve hangs below its ends here, mm: shade down. */
function dipAt({ swags, across }: Form, xMm: number): number {
  const swag = across === "flat" ? swags.find(({ fromMm, toMm }) => fromMm < xMm && xMm < toMm) : undefined;
  if (swag === undefined) return 0;
  const share = (xMm - swag.fromMm) / (swag.toMm - swag.fromMm);
  return swag.sagMm * 4 * share * (1 - share);
}
