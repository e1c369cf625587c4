import type { Finding, WorkingBook } from "../figures/index.ts";
import type { MakingGroup, ResolvedMaking, ResolvedShade } from "../job/index.ts";
import type { ClothPlan, Column, Form, Grid, Size, StyleStep } from "../shade-plan/index.ts";
import type { ShapeInput, VisibleShape } from "./visible-shape.ts";

/** What sits under the board and takes up the cords: the folds gather below it. */
export interface LiftPartsHeight {
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  /** What it is, in the working of the headrail allowance. */
  label: string;
}

/** A setting that means something to a style. */
export type Ask = {
  [G in MakingGroup]: { group: G; keys: readonly (keyof ResolvedMaking[G])[] };
}[MakingGroup];

export interface StyleStepInput {
  resolved: ResolvedShade;
  size: Size;
  grid: Grid;
  form: Form;
  cloth: ClothPlan;
}

/** What every style of shade answers. A new style is one folder with these. */
export interface Style {
  /** Settings of its own, first asked on the shade's page. */
  asks: readonly Ask[];
  /** Columns come first: their number decides lock or drive, whose height decides the headrail allowance. */
  columns(resolved: ResolvedShade, size: Size, book: WorkingBook): { columns: Column[]; findings: Finding[] };
  /** The whole ring grid, how the shade folds on it, what cloth that takes, and what speaks against it. */
  grid(
    resolved: ResolvedShade,
    size: Size,
    columns: Column[],
    liftParts: LiftPartsHeight,
    book: WorkingBook,
  ): { grid: Grid; form: Form; findings: Finding[] };
  /** The shade as it is seen anywhere between lowered (0) and raised (1). */
  shape(input: ShapeInput, raise: number): VisibleShape;
  /** What is done otherwise, or besides, for this style. */
  steps(input: StyleStepInput): StyleStep[];
}
