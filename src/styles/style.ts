import type { StageResult } from "../figures/index.ts";
import type { MakingGroup, ReadOf, Reads, ResolvedMaking, ResolvedShade } from "../job/index.ts";
import type { ClothPlan, Column, Form, Grid, Size, StyleStep } from "../shade-plan/index.ts";
import type { StyleInLine } from "./in-line.ts";

/** A setting that means something to a style. */
export type Ask = {
  [G in MakingGroup]: { group: G; keys: readonly (keyof ResolvedMaking[G])[] };
}[MakingGroup];

/** What columns are laid from: the part `S` of the shade that the style reads for it, and its finished size. */
export interface ColumnsInput<S> {
  shade: S;
  size: Size;
}

/** What rows are laid from: columns come before them, since lock or drive are chosen by their number. */
export interface GridInput<S> extends ColumnsInput<S> {
  columns: Column[];
  /** Least flat cloth above the gathered folds, mm: `headrailNeeded`. */
  headrailNeededMm: number;
}

/** Where the rings sit, how the shade folds on them; its shape stands in `shapes/`. */
export interface LaidGrid {
  grid: Grid;
  form: Form;
}

/** A shade whose cloth is planned, for the words of its making. */
export interface StyleStepInput {
  shade: StepsShade;
  size: Size;
  grid: Grid;
  form: Form;
  cloth: ClothPlan;
}

/** What the steps of a style put into words. */
export type StepsShade = Pick<ResolvedShade, "units" | "ring" | "cloths"> & {
  making: Pick<ResolvedMaking, "board" | "hems" | "gather" | "pleat" | "relax">;
};

type StyleReads = Reads<Exclude<keyof ResolvedShade, "making" | "own">, MakingGroup, MakingGroup>;

/** What every style of shade answers, by the parts of the shade that it reads. A new style is one folder with these. */
export interface StyleOf<C extends StyleReads, G extends StyleReads> {
  /** What `columns` and `grid` read of the shade. */
  reads: { columns: C; grid: G };
  /** Settings of its own, first asked on the shade's page. */
  asks: readonly Ask[];
  /** Columns, from the left. They come first: their number decides lock or drive, whose height decides the headrail allowance. */
  columns: (input: ColumnsInput<ReadOf<C>>) => StageResult<Column[]>;
  /** The whole ring grid, how the shade folds on it, what cloth that takes, and what speaks against it. */
  grid: (input: GridInput<ReadOf<G>>) => StageResult<LaidGrid>;
  /** How its rows are placed by the room, or why they cannot be, as the end of “… since”. */
  inLine: StyleInLine | string;
  /** What is done otherwise, or besides, for this style. */
  steps: (input: StyleStepInput) => StyleStep[];
}

/** Any style: what it reads is known when the program runs. */
export type Style = StyleOf<StyleReads, StyleReads>;
