import { type Figure, figureRule, type StageResult } from "../figures/index.ts";
import type { RoomAlignment } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { markMm, SAME_LENGTH_MM } from "../units/index.ts";
import { judgeLine } from "./judge-line.ts";
import type { LineProblem, LineSolution, LineWindow, SolvedLine } from "./line-problem.ts";
import { type MotifStart, motifLines } from "./motif.ts";
import { isFree, type RoomInput, type RoomWindow } from "./room-window.ts";
import { solveLine } from "./solve.ts";
import { verifyLine } from "./verify.ts";
import { type Hindrance, hindrance } from "./why.ts";
import type { WindowOutcome } from "./window-outcome.ts";
import { roomWords, windowWords } from "./words.ts";

/** What the windows of a room share, and what each of them is told. */
export interface RoomInLine {
  alignment: RoomAlignment;
  /** Where the pattern begins on each shade that follows a motif line, by shade. */
  motifs: ReadonlyMap<string, MotifStart>;
}

/**
 * Lines up the folds, the raised hems and the patterns of one room. Findings of one shade carry its id.
 *
 * @throws where the line that was found breaks one of its own rules: a bug
 */
export function alignWindows(input: RoomInput): StageResult<RoomInLine> {
  const problem = problemOf(input);
  const solution = solveLine(problem);
  const faults = verifyLine(problem, solution);
  if (faults.length > 0) throw new Error(`invalid line of ${input.roomName}: ${faults.join("; ")}`);
  const outcomes = input.windows.map((window) => outcomeOf(input, problem, solution, window));
  const motifs = motifLines(input);
  const line: Omit<RoomAlignment, "words"> = {
    ...(solution.kind === "aligned" ? { spacingMm: solution.spacingMm } : {}),
    levelsMm: levelsOf(input, outcomes),
    ...(solution.kind === "aligned" && solution.raisedHemMm !== undefined
      ? { raisedHemMm: solution.raisedHemMm }
      : {}),
    motifs: motifs.lines,
    windows: outcomes.map(({ aligned }) => aligned),
    proven: solution.kind !== "aligned" || solution.proven,
  };
  const answer = { ...line, words: roomWords(line, input.units) };
  return {
    values: { alignment: answer, motifs: motifs.starts },
    findings: judgeLine(input, problem, answer, outcomes, motifs),
    workings: solution.kind === "aligned" ? roomFigures(problem, solution) : [],
  };
}

function problemOf(input: RoomInput): LineProblem {
  const { settings, units } = input;
  const windows = input.windows.flatMap((window): LineWindow[] => {
    const { ask, shade, size, own } = window;
    if (typeof ask === "string" || settings.folds === "own" || !isFree(input, window)) return [];
    const topMm = size.topAboveFloorMm;
    return [{ id: shade.shadeId, ...(topMm === undefined ? {} : { topMm }), ask, own }];
  });
  return {
    markMm: markMm(units.ruler),
    windows,
    folds: settings.folds === "levels" ? "levels" : "spacing",
    stack: settings.stack,
    ...(settings.spacingMm === undefined ? {} : { spacingMm: settings.spacingMm }),
    mostLowerMm: settings.mostLowerMm,
  };
}

function outcomeOf(
  input: RoomInput,
  problem: LineProblem,
  solution: LineSolution,
  window: RoomWindow,
): WindowOutcome {
  const { settings, units } = input;
  const { shadeId, windowName } = window.shade;
  const placed = solution.kind === "aligned" ? solution.layouts.get(shadeId) : undefined;
  const hinders = whatHinders(input, problem, solution, window);
  const aligned = {
    shadeId,
    windowName,
    follows: placed?.follows ?? ("own" as const),
    ...(placed === undefined ? {} : { layout: placed.layout }),
    sharesRaisedHem: placed?.sharesRaisedHem ?? false,
    ...(hinders === undefined ? {} : { why: hinders.words }),
  };
  return {
    window,
    aligned: { ...aligned, words: windowWords(aligned, settings.folds, units) },
    ...(hinders === undefined ? {} : { hindrance: hinders }),
  };
}

function whatHinders(
  input: RoomInput,
  problem: LineProblem,
  solution: LineSolution,
  window: RoomWindow,
): Hindrance | undefined {
  const { settings, units } = input;
  if (settings.folds === "own") return undefined;
  if (!isFree(input, window)) return { words: "it was left out of the line" };
  if (typeof window.ask === "string") return { words: window.ask };
  if (solution.kind !== "aligned") return { words: "no other window can share a spacing with it" };
  const { shadeId } = window.shade;
  const one = problem.windows.find(({ id }) => id === shadeId);
  const placed = solution.layouts.get(shadeId);
  if (one === undefined || placed?.follows === "levels") return undefined;
  if (placed === undefined) return hindrance(problem, solution, one, "spacing", units);
  return settings.folds === "levels" ? hindrance(problem, solution, one, "levels", units) : undefined;
}

/** Heights of all rows that stand on the shared levels, each once, lowest first. */
function levelsOf(input: RoomInput, outcomes: readonly WindowOutcome[]): number[] {
  const heights = outcomes
    .flatMap(({ window: { size }, aligned: { follows, layout } }) => {
      const topMm = size.topAboveFloorMm;
      if (follows !== "levels" || layout === undefined || topMm === undefined) return [];
      const firstMm = topMm - size.finishedLengthMm + layout.bottomMm;
      return Array.from({ length: layout.rows }, (_, row) => firstMm + row * layout.spacingMm);
    })
    .sort((a, b) => a - b);
  const mark = markMm(input.units.ruler);
  return heights
    .filter((mm, i) => i === 0 || mm - (heights[i - 1] ?? 0) > SAME_LENGTH_MM)
    .map((mm) => Math.round(mm / mark) * mark);
}

const SPACING = figureRule({
  id: "align.spacing",
  label: "Spacing shared by the room",
  symbol: "s",
  unit: "mm",
  formula: "n·u",
  inputs: { n: ["count", "marks of the ruler"], u: ["mm", "one mark"] },
  cite: cite("our-choice", "most windows in line, then the least cloth that hangs below the boards"),
  compute: ({ n, u }) => n * u,
});

const GIVEN = figureRule({
  id: "align.given",
  label: "Given for the line, all windows together",
  symbol: "g",
  unit: "mm",
  formula: "a + b",
  inputs: { a: ["mm", "more headrail than needed"], b: ["mm", "hem sections longer than wanted"] },
  cite: cite("geometry"),
  compute: ({ a, b }) => a + b,
});

function roomFigures({ markMm: u }: LineProblem, { spacingMm, layouts }: SolvedLine): Figure[] {
  const laid = [...layouts.values()].map(({ layout }) => layout);
  return [
    SPACING.figure({ n: Math.round(spacingMm / u), u }),
    GIVEN.figure({
      a: laid.reduce((sum, { headrailExtraMm }) => sum + headrailExtraMm, 0),
      b: laid.reduce((sum, { bottomExtraMm }) => sum + bottomExtraMm, 0),
    }),
  ];
}
