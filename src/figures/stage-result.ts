import type { Figure } from "./figure-rule.ts";
import type { Finding } from "./finding.ts";
import { lazy } from "./lazy.ts";

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

const NOTHING = () => [];

/** The values of a stage; findings, with their words and remedies, and workings are made when they are first read. */
export function staged<V>(values: V, { findings = NOTHING, workings = NOTHING }: Late): StageResult<V> {
  const [found, worked] = [lazy(findings), lazy(workings)];
  return {
    values,
    get findings() {
      return found();
    },
    get workings() {
      return worked();
    },
  };
}

/** The same, where what the plan shows of it has more than other stages read; its getters stay unread. */
export function stagedWhole<V, W extends V>(values: V, whole: W, late: Late): WholeResult<V, W> {
  return Object.assign(staged(values, late), { whole });
}

/** The same result with these equal values in place of its own; what is late in it stays so. */
export function withValues<R extends StageResult<unknown>>(result: R, values: R["values"]): R {
  const same = Object.getOwnPropertyDescriptors(result);
  return Object.create(null, { ...same, values: { value: values, enumerable: true } });
}

/** The same result, of which there is more to find. */
export function alsoFinding<V>(result: StageResult<V>, more: () => readonly Finding[]): StageResult<V> {
  return staged(result.values, {
    findings: () => [...result.findings, ...more()],
    workings: () => result.workings,
  });
}
