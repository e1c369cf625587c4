import { type Figure, figureRule, figureRuleOf, type Worked } from "../figures/index.ts";
import { BAR_STIFFNESS, type Bar, barMassGPerM } from "../job/index.ts";
import { type FoldCloth, rectangle, roundTube, solveBeam } from "../mechanics/index.ts";
import { type HemSag, massByCarrier, ribCount } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import type { FoldsInput } from "./folds-input.ts";

/** A hem that sags less looks straight. */
const LEAST_LIMIT = sourced(2, "mm", cite("our-choice", "less is not seen"));
const SPAN_SHARE = sourced(300, "ratio", cite("our-choice", "a 300th of the bay"));

const COLUMNS = ["columns/largestSpacingMm", "columns/count", "figure:shape.columns"] as const;

const SAG_LIMIT = figureRule({
  id: "folds.sag-limit",
  label: "Sag of the hem that is not seen",
  symbol: "v_max",
  unit: "mm",
  formula: "max(u, b / k)",
  inputs: {
    u: ["mm", "less is not seen"],
    b: ["mm", "widest bay between columns", ...COLUMNS],
    k: ["ratio", "share of the bay"],
  },
  cite: SPAN_SHARE.cite,
  compute: ({ u, b, k }) => Math.max(u, b / k),
});

const SAG = figureRuleOf<"bar" | "rib">()({
  id: (what) => `folds.${what}-sag`,
  label: (what) => `${what === "bar" ? "Weight bar" : "Rib"}: sag between columns`,
  symbol: "v",
  unit: "mm",
  formula: "f·q·b^4 / (1000·E·I)",
  inputs: (what) => ({
    f: ["ratio", "share by number and place of the columns", ...COLUMNS],
    q: ["N", "load on each metre", "figure:folds.start", `figure:cloth.${what}-mass`, "lift/rearCords"],
    b: ["mm", "widest bay between columns"],
    E: ["ratio", "modulus of elasticity, N/mm²", what === "bar" ? "board/bar" : "ribs/rib"],
    I: ["ratio", "second moment of area, mm⁴"],
  }),
  cite: cite("beam-theory", "continuous beam on the columns, by the three-moment equation"),
  compute: ({ f = 0, q = 0, b = 0, E = 1, I = 1 }) => (f * q * b ** 4) / (1000 * E * I),
});

/** A bar on the columns, and what weighs on each mm of it. */
export interface LoadedBar {
  bar: Bar;
  loadNPerMm: number;
}

/** How far bar, rib and bare cloth hang through between the columns. */
export function hemSag(input: FoldsInput, cloth: FoldCloth): Worked<HemSag> {
  const columnsMm = input.grid.columns.map(({ xMm }) => xMm);
  const limit = SAG_LIMIT.figure({
    u: LEAST_LIMIT.value,
    b: widestBay(columnsMm),
    k: SPAN_SHARE.value,
  });
  const { bar, rib } = loadedBars(input, cloth);
  const barSag = bar === undefined ? undefined : sagOf(input, bar, "bar");
  const ribSag = rib === undefined ? undefined : sagOf(input, rib, "rib");
  return {
    values: {
      barMm: barSag?.value ?? 0,
      limitMm: limit.value,
      ...(ribSag === undefined ? {} : { ribMm: ribSag.value }),
      fewestColumns: fewestColumns(
        input,
        [bar, rib].filter((one) => one !== undefined),
      ),
      clothSpanMm: clothSpan(cloth, limit.value),
    },
    workings: [limit, barSag, ribSag].filter((figure) => figure !== undefined),
  };
}

/**
 * The bar in the hem carries itself and the cloth that hangs with it below the lowest row; a rib carries itself and the
 * cloth of its own spacing. What is gathered above hangs from the columns by its own rows.
 */
export function loadedBars(
  { shade, size, grid, form, mass }: FoldsInput,
  { skirt, weightNPerMm2 }: FoldCloth,
): { bar?: LoadedBar; rib?: LoadedBar } {
  const rowsNPerMm = (massByCarrier(mass).rowsKg * GRAVITY) / size.finishedWidthMm;
  const ribs = ribCount(form);
  const spacingMm = Math.max(grid.bottomSectionMm, ...form.stretches.map(({ clothMm }) => clothMm));
  return {
    ...(form.bar === undefined ? {} : { bar: { bar: shade.bar, loadNPerMm: skirt.weightNPerMm } }),
    ...(ribs === 0
      ? {}
      : { rib: { bar: shade.rib, loadNPerMm: weightNPerMm2 * spacingMm + rowsNPerMm / ribs } }),
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
  return Math.abs(beam.largestDeflection.value);
}

function bays(columnsMm: readonly number[]): [number, number][] {
  return columnsMm.slice(1).map((to, i) => [columnsMm[i] ?? 0, to]);
}

/** The widest gap between neighbouring columns, mm; 0 where there is one column. */
export function widestBay(columnsMm: readonly number[]): number {
  return Math.max(0, ...bays(columnsMm).map(([from, to]) => to - from));
}

/** The largest sag of a bay that passes for straight, mm. */
export function limitOf(bayMm: number): number {
  return Math.max(LEAST_LIMIT.value, bayMm / SPAN_SHARE.value);
}

function sagOf({ grid, size }: FoldsInput, loaded: LoadedBar, what: "bar" | "rib"): Figure {
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const { bar, loadNPerMm } = loaded;
  const sagMm = sagOver(columnsMm, size.finishedWidthMm, loaded);
  const spanMm = widestBay(columnsMm);
  const stiffness = barStiffnessNmm2(bar);
  const whole = loadNPerMm * spanMm ** 4;
  const { value: modulus } = BAR_STIFFNESS[bar.material];
  const given = {
    f: whole > 0 ? (sagMm * stiffness) / whole : 0,
    q: loadNPerMm * 1000,
    b: spanMm,
    E: modulus,
    I: stiffness / modulus,
  };
  return SAG.figure(given, what);
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
