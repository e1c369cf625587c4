import type { Figure } from "./figure-rule.ts";
import type { Finding } from "./finding.ts";

/** What a stage of the work returns: what it worked out, what speaks against it, and how each figure came about. */
export interface StageResult<V> {
  values: V;
  findings: readonly Finding[];
  workings: readonly Figure[];
}

/** Values with the figures behind them: a part of a stage. */
export interface Worked<V> {
  values: V;
  workings: readonly Figure[];
}
