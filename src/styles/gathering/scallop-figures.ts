import { type Figure, figureRuleOf } from "../../figures/index.ts";
import { cite } from "../../sources/index.ts";
import type { Scallop } from "../base/scallop.ts";

interface SagOf {
  label: string;
  /** What the scallop hangs by, as figures name what they rest on. */
  hangsBy: readonly string[];
}

const SPAN = ["mm", "between two columns", "figure:shape.column-spacing"] as const;

const STRAIGHT = figureRuleOf<SagOf>()({
  id: "shape.sag",
  label: ({ label }) => label,
  symbol: "D",
  unit: "mm",
  formula: "(a − w) / 2",
  inputs: ({ hangsBy }) => ({ a: ["mm", "cloth across a scallop", ...hangsBy], w: SPAN }),
  cite: cite("catenary"),
  note: "as much cloth as width: nothing hangs",
  compute: ({ a, w }) => (a - w) / 2,
});

const SAG = figureRuleOf<SagOf>()({
  id: "shape.sag",
  label: ({ label }) => label,
  symbol: "D",
  unit: "mm",
  formula: "2·k·sinh(w / (4·k))^2",
  inputs: ({ hangsBy }) => ({
    k: ["mm", "parameter of the catenary: its cloth is 2·k·sinh(w / (2·k))", ...hangsBy],
    w: SPAN,
  }),
  cite: cite("catenary"),
  compute: ({ k, w }) => 2 * k * Math.sinh(w / (4 * k)) ** 2,
});

/** How far a scallop hangs, by the catenary of its cloth, mm. */
export function sagFigure({ spanMm, arcMm, parameterMm }: Scallop, of: SagOf): Figure {
  return parameterMm === undefined
    ? STRAIGHT.figure({ a: arcMm, w: arcMm }, of)
    : SAG.figure({ k: parameterMm, w: spanMm }, of);
}

const ARC = figureRuleOf<Pick<SagOf, "hangsBy">>()({
  id: "shape.scallop-cloth",
  label: "Cloth across a scallop",
  symbol: "a",
  unit: "mm",
  formula: "2·k·sinh(w / (2·k))",
  inputs: ({ hangsBy }) => ({
    k: ["mm", "parameter of the catenary that hangs by the sag", ...hangsBy],
    w: SPAN,
  }),
  cite: cite("catenary"),
  compute: ({ k, w }) => 2 * k * Math.sinh(w / (2 * k)),
});

/** The cloth that a scallop of this sag takes, mm; none where it lies straight. */
export function arcFigures({ spanMm, parameterMm }: Scallop, hangsBy: readonly string[]): Figure[] {
  return parameterMm === undefined ? [] : [ARC.figure({ k: parameterMm, w: spanMm }, { hangsBy })];
}
