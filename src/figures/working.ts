import type { Cite } from "../sources/index.ts";
import { type Figure, workingOf } from "./figure-rule.ts";

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

type Given = readonly [value: number, unit: FigureUnit, label: string];

export interface FigureSpec<S extends string> {
  label: string;
  symbol: string;
  unit: FigureUnit;
  formula: string;
  given: Record<S, Given>;
  cite: Cite;
  note?: string;
  /** The same formula as code. It sees only what `given` names. */
  compute: (values: Record<S, number>) => number;
}

/**
 * Collects the workings of one shade while its figures are computed.
 * A figure is computed *through* the book, once, so that number and working cannot drift apart.
 */
export class WorkingBook {
  readonly workings: Working[] = [];

  /** Takes the figures that a stage has computed. */
  add(figures: readonly Figure[]): void {
    for (const figure of figures) this.workings.push(workingOf(figure));
  }

  /** Computes a figure and writes its working down. Throws on a number that is not finite: a bug. */
  figure<S extends string>(id: string, spec: FigureSpec<S>): number {
    const values = {} as Record<S, number>;
    const inputs: WorkingInput[] = [];
    for (const symbol in spec.given) {
      const [value, unit, label] = spec.given[symbol];
      values[symbol] = value;
      inputs.push({ symbol, label, value, unit });
    }
    const value = spec.compute(values);
    if (!Number.isFinite(value)) throw new Error(`invalid figure ${id}: ${value}`);
    const { label, symbol, formula, unit, cite, note } = spec;
    this.workings.push({
      id,
      label,
      symbol,
      formula,
      inputs,
      value,
      unit,
      cite,
      ...(note === undefined ? {} : { note }),
    });
    return value;
  }
}
