import type { Cite } from "../sources/index.ts";
import type { FigureUnit, Working } from "./working.ts";

/** Words or a source, the same for every figure of a rule or chosen by what the figure is of. */
type Of<O, T> = T | ((of: O) => T);

/**
 * One quantity of a formula: its unit, what it is, and what it rests on: settings of the shade (`fold/rows`),
 * measurements (`opening/widthsMm`), other fields of the window (`shade/face`), or other figures, by `figure:` and
 * their id (`figure:shape.headrail`; a `*` stands for one part of an id, as in `figure:cloth.*-cut-length`).
 */
export type FigureInput<O = void> = readonly [unit: FigureUnit, label: Of<O, string>, ...restsOn: string[]];

/** How one figure of a plan comes about: a constant of the module that computes it. */
export interface FigureRuleSpec<S extends string, O = void> {
  /** Stable name, `stage.what`, e.g. `fold.half-fold`. */
  id: Of<O, string>;
  label: Of<O, string>;
  symbol: Of<O, string>;
  unit: FigureUnit;
  /** Plain mathematics over the symbols of `inputs` (`(L − T − k) / N`, `ceil(W / m) + 1`). */
  formula: Of<O, string>;
  inputs: Of<O, Readonly<Record<S, FigureInput<O>>>>;
  cite: Of<O, Cite>;
  note?: Of<O, string | undefined>;
  /** What decides the figure besides the quantities of its formula, as in `FigureInput`. */
  restsOn?: readonly string[];
  /** The same formula as code. It sees only what stands in the formula. */
  compute: (given: Readonly<Record<S, number>>, of: O) => number;
}

/** A figure as it was computed: its rule and what went in. Its words are made when someone reads them. */
export interface Figure {
  readonly value: number;
  readonly rule: FigureWords;
  readonly given: Readonly<Record<string, number>>;
  /** What it is of, where its rule serves many: a layer, a cord. */
  readonly of: unknown;
}

/** What a figure's rule has to say about it; `of` is the figure's own. */
interface FigureWords {
  id(of: unknown): string;
  restsOn(of: unknown): string[];
  working(figure: Figure, of: unknown): Working;
}

/** Computes figures and writes their workings down; number and working come from one place and cannot drift apart. */
export class FigureRule<S extends string, O> implements FigureWords {
  readonly #spec: FigureRuleSpec<S, O>;

  constructor(spec: FigureRuleSpec<S, O>) {
    this.#spec = spec;
  }

  /** @throws on a number that is not finite: a bug */
  figure(given: Readonly<Record<S, number>>, of: O): Figure {
    const value = this.#spec.compute(given, of);
    if (!Number.isFinite(value)) throw new Error(`invalid figure ${this.id(of)}: ${value}`);
    return { value, rule: this, given, of };
  }

  id(of: O): string {
    return said(this.#spec.id, of);
  }

  /** What an engineer would write by hand beside the number. */
  working({ value, given }: Figure, of: O): Working {
    const { unit } = this.#spec;
    const note = said(this.#spec.note, of);
    const inputs = Object.entries<FigureInput<O>>(said(this.#spec.inputs, of));
    return {
      id: this.id(of),
      label: said(this.#spec.label, of),
      symbol: said(this.#spec.symbol, of),
      formula: said(this.#spec.formula, of),
      inputs: inputs.map(([symbol, input]) => ({
        symbol,
        label: said(input[1], of),
        value: given[symbol] ?? Number.NaN,
        unit: input[0],
      })),
      value,
      unit,
      cite: said(this.#spec.cite, of),
      ...(note === undefined ? {} : { note }),
    };
  }

  /** What the figure rests on, as `FigureInput` names it, the nearest first. */
  restsOn(of: O): string[] {
    const inputs = Object.values<FigureInput<O>>(said(this.#spec.inputs, of));
    return [...new Set([...inputs.flatMap(([, , ...restsOn]) => restsOn), ...(this.#spec.restsOn ?? [])])];
  }
}

/** A rule for one figure. */
export function figureRule<S extends string>(spec: FigureRuleSpec<S>): FigureRule<S, void> {
  return new FigureRule(spec);
}

/** A rule for many figures of one kind: `figureRuleOf<{ cord: number }>()({ id: ({ cord }) => …, … })`. */
export function figureRuleOf<O>(): <S extends string>(spec: FigureRuleSpec<S, O>) => FigureRule<S, O> {
  return (spec) => new FigureRule(spec);
}

export function figureId({ rule, of }: Figure): string {
  return rule.id(of);
}

export function workingOf(figure: Figure): Working {
  return figure.rule.working(figure, figure.of);
}

function said<O, T>(words: Of<O, T>, of: O): T {
  return typeof words === "function" ? (words as (of: O) => T)(of) : words;
}
