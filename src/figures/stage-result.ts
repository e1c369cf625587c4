import type { Figure } from "./figure-rule.ts";
import type { Finding } from "./finding.ts";

/** What a stage of the work returns: what it worked out, what speaks against it, and how each figure came about. */
export interface StageResult<V> extends Worked<V> {
  readonly findings: readonly Finding[];
}

/** Values with the figures behind them: a part of a stage. */
export interface Worked<V> {
  readonly values: V;
  readonly workings: readonly Figure[];
}

/** What is said of the values of a stage, made when someone reads it. */
export interface Said {
  findings?: () => readonly Finding[];
  workings?: () => readonly Figure[];
}

const NOTHING = () => [];

/** The values of a stage; findings, with their words and remedies, and workings are made when they are first read. */
export function staged<V>(values: V, { findings = NOTHING, workings = NOTHING }: Said): StageResult<V> {
  return new Staged(values, findings, workings);
}

/** The same findings and workings with values that are equal to its own. */
export function withValues<R extends Worked<unknown>>(result: R, values: R["values"]): R {
  return result instanceof Staged ? (result.having(values) as Worked<unknown> as R) : { ...result, values };
}

/** The same result, of which there is more to find. */
export function alsoFinding<V>(result: StageResult<V>, more: () => readonly Finding[]): StageResult<V> {
  return staged(result.values, {
    findings: () => [...result.findings, ...more()],
    workings: () => result.workings,
  });
}

class Staged<V> implements StageResult<V> {
  readonly values: V;
  readonly #makeFindings: () => readonly Finding[];
  readonly #makeWorkings: () => readonly Figure[];
  #findings: readonly Finding[] | undefined;
  #workings: readonly Figure[] | undefined;

  constructor(values: V, findings: () => readonly Finding[], workings: () => readonly Figure[]) {
    this.values = values;
    this.#makeFindings = findings;
    this.#makeWorkings = workings;
  }

  get findings(): readonly Finding[] {
    this.#findings ??= this.#makeFindings();
    return this.#findings;
  }

  get workings(): readonly Figure[] {
    this.#workings ??= this.#makeWorkings();
    return this.#workings;
  }

  having(values: V): Staged<V> {
    return new Staged(
      values,
      () => this.findings,
      () => this.workings,
    );
  }
}
