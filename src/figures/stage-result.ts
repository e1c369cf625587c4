import type { Figure } from "./figure-rule.ts";
import type { Finding } from "./finding.ts";

/** What a stage of the work returns: what it worked out, what speaks against it, and how each figure came about. */
export interface StageResult<V> extends Worked<V> {
  readonly findings: readonly Finding[];
}

/** A stage that no other stage reads all of: `values` is what they read, `whole` has what is worked out when someone asks. */
export interface WholeResult<V, W extends V> extends StageResult<V> {
  readonly whole: W;
}

/** Values with the figures behind them: a part of a stage. */
export interface Worked<V> {
  readonly values: V;
  readonly workings: readonly Figure[];
}

/** What is said of the values of a stage, made when someone reads it. */
interface Late {
  findings?: () => readonly Finding[];
  workings?: () => readonly Figure[];
}

/** Made of a job of thousands by the ten thousand: one object each, whose getters all share. */
class Staged<V, W extends V> implements WholeResult<V, W> {
  readonly values: V;
  readonly whole: W;
  readonly #late: Late;
  #findings: readonly Finding[] | undefined;
  #workings: readonly Figure[] | undefined;

  constructor(values: V, whole: W, late: Late) {
    this.values = values;
    this.whole = whole;
    this.#late = late;
  }

  get findings(): readonly Finding[] {
    this.#findings ??= this.#late.findings?.() ?? [];
    return this.#findings;
  }

  get workings(): readonly Figure[] {
    this.#workings ??= this.#late.workings?.() ?? [];
    return this.#workings;
  }
}

/** The values of a stage; findings, with their words and remedies, and workings are made when they are first read. */
export function staged<V>(values: V, late: Late): StageResult<V> {
  return new Staged(values, values, late);
}

/** The same, where what the plan shows of it has more than other stages read; its getters stay unread. */
export function stagedWhole<V, W extends V>(values: V, whole: W, late: Late): WholeResult<V, W> {
  return new Staged(values, whole, late);
}

/** The same result with these equal values in place of its own; what is late in it stays so. */
export function withValues<R extends StageResult<unknown>>(result: R, values: R["values"]): R {
  const late = { findings: () => result.findings, workings: () => result.workings };
  const whole = "whole" in result ? result.whole : values;
  return new Staged(values, whole, late) as StageResult<unknown> as R;
}

/** The same result, of which there is more to find. */
export function alsoFinding<V>(result: StageResult<V>, more: () => readonly Finding[]): StageResult<V> {
  return staged(result.values, {
    findings: () => [...result.findings, ...more()],
    workings: () => result.workings,
  });
}
