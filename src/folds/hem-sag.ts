import type { WorkingBook } from "../figures/index.ts";
import { BAR_STIFFNESS, type Bar, barMassGPerM } from "../job/index.ts";
import { type FoldCloth, rectangle, roundTube, solveBeam } from "../mechanics/index.ts";
import { type HemSag, massByCarrier, ribCount } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { FoldsInput } from "./folds-input.ts";

/** A hem that sags less looks straight. */
const LEAST_LIMIT = sourced(2, "mm", cite("our-choice", "less is not seen"));
const SPAN_SHARE = sourced(300, "ratio", cite("our-choice", "a 300th of the bay"));

/** A bar on the columns, and what weighs on each mm of it. */
export interface LoadedBar {
  bar: Bar;
  loadNPerMm: number;
}

/** How far bar, rib and bare cloth hang through between the columns. */
export function hemSag(input: FoldsInput, cloth: FoldCloth, book: WorkingBook): HemSag {
  const columnsMm = input.grid.columns.map(({ xMm }) => xMm);
  const limitMm = sagLimit(widestBay(columnsMm), book);
  const bars = loadedBars(input, cloth);
  const barMm = bars.bar === undefined ? 0 : writeSag(input, bars.bar, "bar", book);
  const ribMm = bars.rib === undefined ? undefined : writeSag(input, bars.rib, "rib", book);
  const held = [bars.bar, bars.rib].filter((one) => one !== undefined);
  return {
    barMm,
    limitMm,
    ...(ribMm === undefined ? {} : { ribMm }),
    fewestColumns: fewestColumns(input, held),
    clothSpanMm: clothSpan(cloth, limitMm),
  };
}

/**
 * The bar in the hem carries itself and the cloth that hangs with it below the lowest row; a rib carries itself and the
 * cloth of its own spacing. What is gathered above hangs from the columns by its own rows.
 */
export function loadedBars(
  { resolved, size, grid, form, mass }: FoldsInput,
  { skirt, weightNPerMm2 }: FoldCloth,
): { bar?: LoadedBar; rib?: LoadedBar } {
  const rowsNPerMm = (massByCarrier(mass).rowsKg * GRAVITY) / size.finishedWidthMm;
  const ribs = ribCount(form);
  const spacingMm = Math.max(grid.bottomSectionMm, ...form.stretches.map(({ clothMm }) => clothMm));
  return {
    ...(form.bar === undefined ? {} : { bar: { bar: resolved.bar, loadNPerMm: skirt.weightNPerMm } }),
    ...(ribs === 0
      ? {}
      : { rib: { bar: resolved.rib, loadNPerMm: weightNPerMm2 * spacingMm + rowsNPerMm / ribs } }),
  };
}

/** E·I upright, N·mm²: a flat bar stands on its edge in the hem. */
export function barStiffnessNmm2({ material, round, widthMm, thicknessMm }: Bar): number {
  const section = round === true ? roundTube(widthMm) : rectangle(thicknessMm, widthMm);
  return BAR_STIFFNESS[material].value * section.inertiaMm4;
}

/** Weight of a bar on each mm of its length. */
export function barWeightNPerMm(bar: Bar): number {
  return barMassGPerM(bar) * GRAVITY * 1e-6;
}

/** Largest sag of a bar over columns, mm: between them, and at its ends beyond them. */
export function sagOver(
  columnsMm: readonly number[],
  widthMm: number,
  { bar, loadNPerMm }: LoadedBar,
): number {
  if (columnsMm.length < 2) return 0;
  const beam = solveBeam({
    supportsMm: columnsMm,
    fromMm: 0,
    toMm: widthMm,
    spread: [{ fromMm: 0, toMm: widthMm, loadNPerMm }],
    points: [],
    stiffnessNmm2: barStiffnessNmm2(bar),
  });
  const ends = [0, widthMm].map((x) => Math.abs(beam.deflectionMm(x)));
  return Math.max(
    ...ends,
    ...bays(columnsMm).map(([from, to]) => Math.abs(beam.deflectionMm((from + to) / 2))),
  );
}

function bays(columnsMm: readonly number[]): [number, number][] {
  return columnsMm.slice(1).map((to, i) => [columnsMm[i] ?? 0, to]);
}

export function widestBay(columnsMm: readonly number[]): number {
  return Math.max(0, ...bays(columnsMm).map(([from, to]) => to - from));
}

export function limitOf(bayMm: number): number {
  return Math.max(LEAST_LIMIT.value, bayMm / SPAN_SHARE.value);
}

function sagLimit(bayMm: number, book: WorkingBook): number {
  return book.figure("folds.sag-limit", {
    label: "Sag of the hem that is not seen",
    symbol: "v_max",
    unit: "mm",
    formula: "max(u, b / k)",
    given: {
      u: [LEAST_LIMIT.value, "mm", "less is not seen"],
      b: [bayMm, "mm", "widest bay between columns"],
      k: [SPAN_SHARE.value, "ratio", "share of the bay"],
    },
    cite: SPAN_SHARE.cite,
    compute: ({ u, b, k }) => Math.max(u, b / k),
  });
}

function writeSag(
  { grid, size }: FoldsInput,
  loaded: LoadedBar,
  what: "bar" | "rib",
  book: WorkingBook,
): number {
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const { bar, loadNPerMm } = loaded;
  const sagMm = sagOver(columnsMm, size.finishedWidthMm, loaded);
  const spanMm = widestBay(columnsMm);
  const stiffness = barStiffnessNmm2(bar);
  const whole = loadNPerMm * spanMm ** 4;
  const factor = whole > 0 ? (sagMm * stiffness) / whole : 0;
  const { value: modulus } = BAR_STIFFNESS[bar.material];
  return book.figure(`folds.${what}-sag`, {
    label: `${what === "bar" ? "Weight bar" : "Rib"}: sag between columns`,
    symbol: "v",
    unit: "mm",
    formula: "f·q·b^4 / (1000·E·I)",
    given: {
      f: [factor, "ratio", "share by number and place of the columns"],
      q: [loadNPerMm * 1000, "N", "load on each metre"],
      b: [spanMm, "mm", "widest bay between columns"],
      E: [modulus, "ratio", "modulus of elasticity, N/mm²"],
      I: [stiffness / modulus, "ratio", "second moment of area, mm⁴"],
    },
    cite: cite("beam-theory", "continuous beam on the columns, by Macaulay’s method"),
    compute: ({ f, q, b, E, I }) => (f * q * b ** 4) / (1000 * E * I),
  });
}

/** Fewest columns, evenly between the outer ones, over which every bar stays straight. */
export function fewestColumns({ grid, size }: FoldsInput, bars: readonly LoadedBar[]): number {
  const first = grid.columns[0]?.xMm ?? 0;
  const last = grid.columns.at(-1)?.xMm ?? size.finishedWidthMm;
  const most = Math.max(2, grid.columns.length);
  for (let count = 2; count < MOST_COLUMNS; count++) {
    const columnsMm = Array.from({ length: count }, (_, i) => first + ((last - first) * i) / (count - 1));
    const limitMm = limitOf(widestBay(columnsMm));
    if (bars.every((bar) => sagOver(columnsMm, size.finishedWidthMm, bar) <= limitMm)) return count;
  }
  return most;
}

const MOST_COLUMNS = 60;

/**
 * Span over which the cloth holds itself level, from v = w b⁴ / (185 B) with B = w c³ in a run of bays: its weight drops out.
 */
function clothSpan({ weightNPerMm2, rigidityNmm }: FoldCloth, limitMm: number): number {
  return (185 * limitMm * (rigidityNmm / weightNPerMm2)) ** (1 / 4);
}
