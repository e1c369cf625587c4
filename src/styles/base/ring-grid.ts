import { figureRuleOf, type Worked } from "../../figures/index.ts";
import { type Column, columnSpacingMm, type Grid, type Row, type Size } from "../../shade-plan/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { FIT_SLACK } from "../../units/index.ts";
import { FINISHED_LENGTH } from "./size-inputs.ts";

/** What a grid of fixed spacing follows from. */
export interface RingGridAsk {
  size: Size;
  columns: Column[];
  headrailMm: number;
  /** Hem to the first row, and from row to row, mm. */
  firstMm: number;
  stepMm: number;
  /** The figure that both follow from. */
  stepFigure: string;
  cite: Cite;
}

/** The grid. `isTooShort`: not even its first row keeps below the headrail allowance. */
export interface RingGrid {
  grid: Grid;
  isTooShort: boolean;
}

const HEADRAIL = [
  "mm",
  "headrail allowance",
  "fold/headrailMm",
  "figure:shape.headrail-needed",
  "figure:measure.finished-length",
] as const;

type StepOf = Pick<RingGridAsk, "stepFigure">;

const first = ({ stepFigure }: StepOf) =>
  ["mm", "hem to the bottom row", `figure:${stepFigure}`, "figure:measure.finished-length"] as const;

const ROWS = figureRuleOf<StepOf & Pick<RingGridAsk, "cite">>()({
  id: "shape.rows",
  label: "Rows of rings",
  symbol: "p",
  unit: "count",
  formula: "max(0, floor((L − T − d) / s)) + 1",
  inputs: (of) => ({
    L: FINISHED_LENGTH,
    T: HEADRAIL,
    d: first(of),
    s: ["mm", "from row to row", `figure:${of.stepFigure}`],
  }),
  cite: (of) => of.cite,
  note: "as many as stay below the headrail allowance",
  compute: ({ L, T, d, s }) => Math.max(0, Math.floor((L - T - d) / s + FIT_SLACK)) + 1,
});

const RAISED_HEIGHT = figureRuleOf<StepOf>()({
  id: "shape.raised-height",
  label: "Raised height, top line to hem",
  symbol: "R",
  unit: "mm",
  formula: "T + d",
  inputs: (of) => ({ T: HEADRAIL, d: first(of) }),
  cite: cite("geometry"),
  compute: ({ T, d }) => T + d,
});

const TRAVEL = figureRuleOf<StepOf>()({
  id: "shape.travel",
  label: "Travel of the bottom row",
  symbol: "r",
  unit: "mm",
  formula: "max(0, L − d − T)",
  inputs: (of) => ({ L: FINISHED_LENGTH, d: first(of), T: HEADRAIL }),
  cite: cite("geometry"),
  compute: ({ L, d, T }) => Math.max(0, L - d - T),
});

/**
 * Rings at a fixed spacing from the hem up, as far as the headrail allowance lets them: where tucks or tape marks
 * decide where a ring can sit, the rows cannot be spread to fill the length.
 */
export function ringGrid(ask: RingGridAsk): Worked<RingGrid> {
  const { size, columns, headrailMm, stepMm } = ask;
  const L = size.finishedLengthMm;
  const isTooShort = L - headrailMm < ask.firstMm;
  // A shade shorter than that still gets a row, halfway at most, so that it can be drawn and judged.
  const d = Math.min(ask.firstMm, L / 2);
  const T = Math.min(headrailMm, L - d);
  const of = { stepFigure: ask.stepFigure, cite: ask.cite };
  const count = ROWS.figure({ L, T, d, s: stepMm }, of);
  const raised = RAISED_HEIGHT.figure({ T, d }, of);
  const travel = TRAVEL.figure({ L, d, T }, of);
  const rows: Row[] = Array.from({ length: count.value }, (_, i) => {
    const fromHemMm = d + i * stepMm;
    return { number: i + 1, fromHemMm, yMm: L - fromHemMm };
  });
  const grid: Grid = {
    rows,
    columns,
    bottomSectionMm: d,
    spacingsMm: rows.slice(1).map(() => stepMm),
    topSectionMm: rows.at(-1)?.yMm ?? L,
    columnSpacingMm: columnSpacingMm(columns),
    headrailMm: T,
    skirtMm: 0,
    raisedHeightMm: raised.value,
    travelMm: travel.value,
    coveredWhenRaisedMm: Math.max(0, raised.value - (size.openingTopMm ?? 0)),
  };
  return { values: { grid, isTooShort }, workings: [count, raised, travel] };
}
