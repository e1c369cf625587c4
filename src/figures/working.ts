import type { Cite } from "../sources/index.ts";

/** Units that a figure of the plan can carry. Lengths are mm; `money` is in the job's currency. */
export type FigureUnit =
  | "mm"
  | "mm2"
  | "g"
  | "kg"
  | "g/m2"
  | "g/m"
  | "kg/m3"
  | "N"
  | "Nm"
  | "ratio"
  | "count"
  | "deg"
  | "money"
  | "min"
  | "s";

/** One quantity that went into a figure. */
export interface WorkingInput {
  symbol: string;
  label: string;
  value: number;
  unit: FigureUnit;
}

/**
 * What an engineer would write by hand beside a number: the formula in symbols,
 * the values that went in, the result and where the formula comes from.
 *
 * `formula` is plain mathematics over the symbols of `inputs`
 * (`(L − T − k) / N`, `ceil(W / m) + 1`), so that a test can evaluate it independently.
 */
export interface Working {
  /** Stable name of the figure, `stage.what`, e.g. `fold.half-fold`. */
  id: string;
  label: string;
  symbol: string;
  formula: string;
  inputs: WorkingInput[];
  value: number;
  unit: FigureUnit;
  cite: Cite;
  note?: string;
}
