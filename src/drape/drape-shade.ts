import { headLine, type ShadePoint } from "../shade-plan/index.ts";
import { type RaisedShape, type Slant, slantOf } from "../styles/index.ts";
import { STYLE_SHAPES } from "../styles/shapes/index.ts";
import { GRAVITY } from "../units/index.ts";
import { cellsOf } from "./cell/cell.ts";
import type { HemLoad } from "./cell/cell-net.ts";
import { settleCell } from "./cell/settle-cell.ts";
import { columnCloth } from "./column-cloth.ts";
import type { DrapeInput } from "./drape-input.ts";
import { gathered } from "./gathers.ts";
import type { HangingCloth, HangingShade } from "./hanging-cloth.ts";
import { joinCells } from "./join-cells.ts";
import { loft } from "./loft.ts";
import { isShirred } from "./shirred-cloth.ts";

export interface DrapeOptions {
  /** The same shade at a height near this one: its cloth is where this one begins. */
  before?: HangingShade;
  /** A wide net and few steps: near enough to look at while a better one is on its way. */
  coarse?: boolean;
}

/**
 * The cloth of a shade anywhere between lowered (0) and raised (1). Where its section is the same all across it is drawn
 * out over the width; where it hangs in swags, a net of it is brought to rest (`settleCell`), one cell for all alike.
 */
export function drapeShade(input: DrapeInput, raise: number, options: DrapeOptions = {}): HangingShade {
  const { style, size, grid, form, folds, board } = input;
  const { section } = STYLE_SHAPES[style](
    { ...{ size, grid, form }, ...(folds === undefined ? {} : { hang: folds.cloth }) },
    raise,
  );
  const lowestMm = section.rows[0]?.yMm ?? 0;
  const { cloth, ...how } = clothOf(input, section, options);
  const slant = slantOf({ size, grid }, section);
  const yAt = slant ?? ((_: number, yMm: number) => yMm);
  return {
    ...how,
    cloth: underHead(slant === undefined ? cloth : slanting(cloth, slant), size),
    ringsMm: section.rows.flatMap(({ yMm }) =>
      grid.columns.map(({ xMm }): [number, number, number] => [xMm, yAt(xMm, yMm), 0]),
    ),
    cordsMm: grid.columns.map(({ xMm }) => ({
      from: [xMm, yAt(xMm, lowestMm), 0],
      to: [xMm, board.thicknessMm, 0],
    })),
  };
}

/** Where rows or hem slant, the cloth as it hangs half way across goes with them. */
function slanting(cloth: HangingCloth, slant: Slant): HangingCloth {
  const placesMm = cloth.placesMm.slice();
  for (let at = 0; at < placesMm.length; at += 3)
    placesMm[at + 1] = slant(placesMm[at] as number, placesMm[at + 1] as number);
  return { ...cloth, placesMm };
}

/** Its cloth is a net that must come to rest, and has a coarse form. */
export function isNet({ folds }: Pick<DrapeInput, "folds">): boolean {
  return folds === undefined;
}

function clothOf(
  input: DrapeInput,
  section: RaisedShape,
  { before, coarse = false }: DrapeOptions,
): Pick<HangingShade, "cloth" | "cells" | "method" | "sinkMm"> {
  const { size, grid, form, folds, feel, board } = input;
  const asDrawn = { cells: [], sinkMm: 0 };
  if (folds !== undefined) return { ...asDrawn, cloth: loft(input, section), method: "section" };
  const celled = cellsOf(form, grid, size.finishedWidthMm);
  const stretches = columnCloth(form, grid, section);
  const bar = hemLoad(input);
  const cells = celled.cells.map((cell, index) => {
    const near = before?.cells[index];
    return settleCell(cell, stretches, {
      ...{ feel, paneMm: board.depthMm, coarse },
      ...(bar === undefined ? {} : { bar }),
      ...(near === undefined ? {} : { before: near }),
    });
  });
  const joined = joinCells(celled, cells, form, size.finishedWidthMm);
  return {
    cells,
    cloth: form.across === "gathered" && !isShirred(form) ? gathered(joined, form.swags) : joined,
    method: cells.every((one) => one.settled) ? "settled" : "unsettled",
    sinkMm: Math.max(...cells.map(({ sinkMm }) => sinkMm)),
  };
}

/** Under an arched or slanted board the cloth begins where the board does. */
function underHead(cloth: HangingCloth, size: DrapeInput["size"]): HangingCloth {
  if (size.head === undefined) return cloth;
  const placesMm = cloth.placesMm.slice();
  for (let at = 0; at < placesMm.length; at += 3)
    placesMm[at + 1] = Math.max(placesMm[at + 1] as number, headAt(headLine(size), placesMm[at] as number));
  return { ...cloth, placesMm };
}

function headAt(head: readonly ShadePoint[], xMm: number): number {
  for (let i = 0; i + 1 < head.length; i++) {
    const [a, b] = [head[i] as ShadePoint, head[i + 1] as ShadePoint];
    if (xMm < a[0] || xMm > b[0] || b[0] === a[0]) continue;
    return a[1] + ((xMm - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
  }
  return (xMm < (head[0]?.[0] ?? 0) ? head[0]?.[1] : head.at(-1)?.[1]) ?? 0;
}

/** A bar along the very hem; a rod at the rings hangs from them, and the cloth does not feel it. */
function hemLoad({ form: { bar }, mass }: DrapeInput): HemLoad | undefined {
  if (bar === undefined || bar.aboveHemMm !== undefined || bar.toMm <= bar.fromMm) return undefined;
  const barKg = mass.parts.reduce((sum, { part, massKg }) => sum + (part === "bar" ? massKg : 0), 0);
  return { weightNPerMm: (barKg * GRAVITY) / (bar.toMm - bar.fromMm), fromMm: bar.fromMm, toMm: bar.toMm };
}
