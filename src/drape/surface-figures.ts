import { STYLE_SHAPES } from "../styles/shapes/index.ts";
import { columnCloth } from "./column-cloth.ts";
import type { DrapeInput } from "./drape-input.ts";
import type { HangingCloth, HangingShade } from "./hanging-cloth.ts";
import { isShirred } from "./shirred-cloth.ts";

/** A figure as the hanging cloth has it, beside what the plan reckons with. */
export interface SurfaceFigure {
  kind: "lowest" | "stands-out" | "draws-in" | "dip" | "along-column";
  /** Of a scallop or a column, from the left. */
  number?: number;
  surfaceMm: number;
  /** Where the plan has the same figure. */
  planMm?: number;
  /** What of the figure is the same in both, mm: they are compared by what lies beyond it. */
  sharedMm?: number;
}

/** A figure that differs by more than this share of the plan's is worth a word; less than so many mm never is. */
const DIFFERS_SHARE = 0.1;
const DIFFERS_MM = 6;

export function differs({ surfaceMm, planMm, sharedMm = 0 }: SurfaceFigure): boolean {
  if (planMm === undefined) return false;
  const offMm = Math.abs(surfaceMm - planMm);
  return offMm > DIFFERS_MM && offMm > DIFFERS_SHARE * Math.abs(planMm - sharedMm);
}

/**
 * What is read from the cloth as it hangs at one height: its lowest point, how far it stands out, how far its sides draw
 * in, the dip of each scallop of its lower edge, and the cloth along each column.
 */
export function surfaceFigures(
  input: DrapeInput,
  raise: number,
  { cloth, method }: HangingShade,
): SurfaceFigure[] {
  const { style, size, grid, form, folds } = input;
  const hang = folds === undefined ? {} : { hang: folds.cloth };
  const { section, lowestYMm } = STYLE_SHAPES[style]({ size, grid, form, ...hang }, raise);
  const columnMm = columnCloth(form, grid, section).reduce(
    (sum, { arcMm, tapeMm = arcMm }) => sum + tapeMm,
    0,
  );
  const figures: SurfaceFigure[] = [
    {
      ...{ kind: "lowest", surfaceMm: mostOf(cloth, 1), planMm: lowestYMm ?? section.bottomYMm },
      // The lowest rings are where the lift holds them: only what hangs below them can differ.
      sharedMm: section.rows[0]?.yMm ?? 0,
    },
    {
      kind: "stands-out",
      surfaceMm: mostOf(cloth, 2),
      ...(section.outMm > 0 ? { planMm: section.outMm } : {}),
    },
    { kind: "draws-in", surfaceMm: drawInMm(cloth, size.finishedWidthMm) },
  ];
  // The plan's own section drawn out says nothing more that was not put into it.
  if (method === "section") return figures;
  const isLowered = raise <= 0;
  const tapes = isShirred(form);
  const dips = tapes ? scallopsOf(input, cloth, section.rows[0]?.yMm ?? 0) : dipsOf(input, cloth);
  return [
    ...figures,
    ...dips.map((surfaceMm, at): SurfaceFigure => {
      const planMm = isLowered ? form.swags[at]?.sagMm : undefined;
      return { kind: "dip", number: at + 1, surfaceMm, ...(planMm === undefined ? {} : { planMm }) };
    }),
    // Raised, a tape folds more finely than the net that is solved.
    ...(tapes && !isLowered ? [] : grid.columns).map(
      ({ number, xMm }): SurfaceFigure => ({
        ...{ kind: "along-column", number, planMm: columnMm },
        surfaceMm: uprightMm(cloth, uprightAt(cloth, xMm)),
      }),
    ),
  ];
}

function mostOf({ placesMm }: HangingCloth, c: 1 | 2): number {
  let most = 0;
  for (let at = c; at < placesMm.length; at += 3) most = Math.max(most, placesMm[at] as number);
  return most;
}

/** How far the left and the right edge come in, the farther of the two, mm. */
function drawInMm({ across, along, placesMm }: HangingCloth, widthMm: number): number {
  let most = 0;
  for (let j = 0; j < along; j++) {
    const left = placesMm[3 * j * across] as number;
    const right = placesMm[3 * (j * across + across - 1)] as number;
    most = Math.max(most, left, widthMm - right);
  }
  return most;
}

/** How far the lower edge hangs between each two columns below the line of its ends, mm; none where it is held level. */
function dipsOf({ grid, form }: DrapeInput, cloth: HangingCloth): number[] {
  if (form.swags.length === 0) return [];
  const { across, along, placesMm } = cloth;
  const hemY = (i: number) => placesMm[3 * ((along - 1) * across + i) + 1] as number;
  const at = grid.columns.map(({ xMm }) => uprightAt(cloth, xMm));
  return at.slice(1).map((to, k) => {
    const from = at[k] as number;
    let deepest = 0;
    for (let i = from; i <= to; i++) {
      const share = (i - from) / Math.max(1, to - from);
      deepest = Math.max(deepest, hemY(i) - (hemY(from) + share * (hemY(to) - hemY(from))));
    }
    return deepest;
  });
}

/** How far the cloth hangs between each two tapes below the lowest rings, the corners of its scallops, mm. */
function scallopsOf(
  { grid }: DrapeInput,
  { across, along, placesMm }: HangingCloth,
  ringYMm: number,
): number[] {
  return grid.columns.slice(1).map(({ xMm: toMm }, k) => {
    const fromMm = grid.columns[k]?.xMm ?? 0;
    let deepest = 0;
    for (let n = 0; n < across * along; n++) {
      const xMm = placesMm[3 * n] as number;
      if (xMm > fromMm && xMm < toMm) deepest = Math.max(deepest, (placesMm[3 * n + 1] as number) - ringYMm);
    }
    return deepest;
  });
}

function uprightAt({ across, flatMm }: HangingCloth, xMm: number): number {
  let nearest = 0;
  for (let i = 1; i < across; i++)
    if (Math.abs((flatMm[2 * i] as number) - xMm) < Math.abs((flatMm[2 * nearest] as number) - xMm))
      nearest = i;
  return nearest;
}

function uprightMm({ across, along, placesMm }: HangingCloth, i: number): number {
  let sum = 0;
  for (let j = 1; j < along; j++) {
    const [a, b] = [3 * ((j - 1) * across + i), 3 * (j * across + i)];
    sum += Math.hypot(...[0, 1, 2].map((c) => (placesMm[b + c] as number) - (placesMm[a + c] as number)));
  }
  return sum;
}
