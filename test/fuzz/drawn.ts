import fc from "fast-check";
import type { CaseDepth } from "./run-case.ts";
import { TEXTS } from "./texts.ts";

export type CaseKind = keyof typeof TEXTS;

/** One case: everything follows from its kind and its number. */
export interface DrawnCase {
  kind: CaseKind;
  seed: number;
}

export function textOf({ kind, seed }: DrawnCase): string {
  const [text = ""] = fc.sample(TEXTS[kind], { seed, numRuns: 1 });
  return text;
}

/** All sheets of a shade at three heights cost two hundred times what its plan costs: some cases stand for all. */
export function depthOf({ seed }: DrawnCase): CaseDepth {
  return { drawings: seed % 200 === 0, remedies: seed % 100 === 1, workbook: seed % 1000 === 2 };
}
