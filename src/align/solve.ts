import type { RowLayout } from "../shade-plan/index.ts";
import { FIT_SLACK, remainderMm } from "../units/index.ts";
import { placesAtSpacing, placesOnLevels, type Way, wantedBottomMm } from "./choices.ts";
import { type Alike, alikeWindows } from "./groups.ts";
import {
  type AlignedRows,
  COUNTS_TWICE_MM,
  type LineProblem,
  type LineScore,
  type LineSolution,
  ROW_WORTH_MM,
  SHARED_HEM_WORTH_MM,
} from "./line-problem.ts";
import { isBetter } from "./score.ts";

/** Places that are looked at in one search, at most; more, and spacings are tried in steps. */
const MOST_LOOKS = 4_000_000;

/**
 * The spacing and the levels that serve a room best: every spacing on a mark, and for each spacing every
 * phase that can be best, with for each window the best layout that is left to it.
 *
 * Exact: a phase between two of those tried lets the same windows in with the same rows and only makes hem
 * sections longer. Windows do not hang on each other once spacing, phase and the level of the shared raised hem
 * are given, so each takes its own best layout.
 */
export function solveLine(problem: LineProblem): LineSolution {
  const alike = alikeWindows(problem.windows);
  const known = alike.reduce(
    (sum, { window, ids }) => sum + (window.topMm === undefined ? 0 : ids.length),
    0,
  );
  const onLevels = problem.folds === "levels" && known >= 2;
  const { marks, proven } = spacingsToTry(problem, alike, onLevels);
  let best: Candidate | undefined;
  for (const mark of marks) {
    const spacingMm = mark * problem.markMm;
    const loose = alike.map(({ window }) => placesAtSpacing(problem, window, spacingMm));
    const phases = onLevels ? phasesToTry(problem, alike, mark) : [];
    for (const phase of [...phases, undefined]) {
      const candidate = bestPlaces(problem, alike, loose, mark, phase);
      if (candidate !== undefined && (best === undefined || isBetter(candidate, best))) best = candidate;
    }
  }
  if (best === undefined || best.score.followers < 2) return { kind: "nothing-shared" };
  return solutionOf(problem, alike, best, proven);
}

export interface Candidate {
  spacingMark: number;
  /** Level modulo spacing, in marks; absent where the spacing alone is shared. */
  phaseMark?: number;
  hemMark?: number;
  score: LineScore;
  picks: (Pick | undefined)[];
}

interface Pick {
  follows: "levels" | "spacing";
  layout: RowLayout;
  costMm: number;
  /** Its raised hem above the floor, in marks, where that is known. */
  hemMark?: number;
}

interface Range {
  marks: number[];
  proven: boolean;
}

function spacingsToTry(problem: LineProblem, alike: readonly Alike[], onLevels: boolean): Range {
  const { markMm, spacingMm } = problem;
  if (spacingMm !== undefined) return { marks: [Math.max(1, Math.round(spacingMm / markMm))], proven: true };
  const asks = alike.map(({ window }) => window.ask);
  const least = Math.max(1, Math.ceil(Math.min(...asks.map((ask) => ask.smallestMm)) / markMm - FIT_SLACK));
  const most = Math.floor(
    Math.max(...asks.map((ask) => Math.min(ask.largestMm, ask.lengthMm - ask.leastHeadrailMm))) / markMm +
      FIT_SLACK,
  );
  let looks = 0;
  for (let mark = least; mark <= most; mark++) {
    looks += alike.length * (onLevels ? 1 + mostPhases(alike, mark) : 1);
  }
  const step = Math.max(1, Math.ceil(looks / MOST_LOOKS));
  const marks: number[] = [];
  for (let mark = least; mark <= most; mark += step) marks.push(mark);
  return { marks, proven: step === 1 };
}

/** A window whose cloth hangs differently at each phase, or that takes one phase alone, asks for all of them. */
function needsEveryPhase({ window: { ask } }: Alike): boolean {
  return ask.bottom.kind === "hem-bar" || ask.headrailFixed;
}

function mostPhases(alike: readonly Alike[], spacingMark: number): number {
  return alike.some(needsEveryPhase) ? spacingMark : Math.min(alike.length, spacingMark);
}

/** Phases at which some window has its wanted hem section: one of them is as good as any between. */
function phasesToTry({ markMm }: LineProblem, alike: readonly Alike[], spacingMark: number): number[] {
  if (alike.some(needsEveryPhase)) return Array.from({ length: spacingMark }, (_, mark) => mark);
  const spacingMm = spacingMark * markMm;
  const phases = new Set<number>();
  for (const { window } of alike) {
    if (window.topMm === undefined) continue;
    const firstMm = window.topMm - window.ask.lengthMm + wantedBottomMm(window.ask, spacingMm);
    phases.add(Math.ceil(remainderMm(firstMm, spacingMm) / markMm - FIT_SLACK) % spacingMark);
  }
  return [...phases].sort((a, b) => a - b);
}

/** the best layout of each window at one spacing and phase. */
function bestPlaces(
  problem: LineProblem,
  alike: readonly Alike[],
  loose: readonly Way[][],
  spacingMark: number,
  phaseMark: number | undefined,
): Candidate | undefined {
  const spacingMm = spacingMark * problem.markMm;
  let levels = 0;
  const choices = alike.map(({ window, ids }, i): Choices => {
    const onLevels =
      phaseMark === undefined ? [] : placesOnLevels(problem, window, spacingMm, phaseMark * problem.markMm);
    if (onLevels.length > 0) levels += ids.length;
    const follows = onLevels.length > 0 ? "levels" : "spacing";
    const ways = onLevels.length > 0 ? onLevels : (loose[i] ?? []);
    const picks = ways.map(
      ({ layout, leastRaisedMm, gaveMm }): Pick => ({
        follows,
        layout,
        costMm: costMm(layout.rows, leastRaisedMm, gaveMm),
        ...hemOf(problem, window.topMm, layout),
      }),
    );
    return { picks, times: ids.length, ownMm: costMm(window.own.rows, window.own.raisedMm) };
  });
  // A window alone on its levels shares them with nobody: the spacing alone says as much.
  if (phaseMark !== undefined && levels < 2) return undefined;
  const { hemMark, costMm: total } = sharedHem(problem, choices);
  const picks = choices.map((choice) => pickOf(choice, hemMark));
  let followers = 0;
  let bottomExtraMm = 0;
  for (const [i, pick] of picks.entries()) {
    if (pick === undefined) continue;
    const times = choices[i]?.times ?? 0;
    followers += times;
    bottomExtraMm += times * pick.layout.bottomExtraMm;
  }
  const score = { levels, followers, costMm: total, bottomExtraMm };
  return {
    spacingMark,
    ...(phaseMark === undefined ? {} : { phaseMark }),
    ...(hemMark === undefined ? {} : { hemMark }),
    score,
    picks,
  };
}

interface Choices {
  picks: Pick[];
  times: number;
  /** What it costs where it follows nothing. */
  ownMm: number;
}

function hemOf(
  { markMm }: LineProblem,
  topMm: number | undefined,
  { raisedMm }: RowLayout,
): { hemMark?: number } {
  return topMm === undefined ? {} : { hemMark: Math.round((topMm - raisedMm) / markMm + FIT_SLACK) };
}

/** What hangs below the board when raised, what gave for the line at its worth, and what each row is worth, mm. */
function costMm(rows: number, leastRaisedMm: number, gaveMm = 0): number {
  return leastRaisedMm + gaveMm * (1 + gaveMm / COUNTS_TWICE_MM) + rows * ROW_WORTH_MM;
}

/** The cheapest pick; with a shared hem given, one on it where it costs no more than sharing is worth. */
function pickOf({ picks }: Choices, hemMark: number | undefined): Pick | undefined {
  let best: Pick | undefined;
  let bestMm = Number.POSITIVE_INFINITY;
  for (const pick of picks) {
    const shares = hemMark !== undefined && pick.hemMark === hemMark;
    const mm = pick.costMm - (shares ? SHARED_HEM_WORTH_MM : 0);
    if (mm < bestMm - FIT_SLACK) {
      best = pick;
      bestMm = mm;
    }
  }
  return best;
}

/** The level of raised hems that saves most, and what all windows then cost; without one where nothing is gained. */
function sharedHem(
  { stack }: LineProblem,
  choices: readonly Choices[],
): { hemMark?: number; costMm: number } {
  let base = 0;
  const gains = new Map<number, number>();
  for (const choice of choices) {
    const cheapest = pickOf(choice, undefined);
    base += choice.times * (cheapest === undefined ? choice.ownMm : cheapest.costMm);
    if (!stack || cheapest === undefined) continue;
    for (const { costMm, hemMark } of choice.picks) {
      if (hemMark === undefined) continue;
      const gain = cheapest.costMm - costMm + SHARED_HEM_WORTH_MM;
      if (gain > 0) gains.set(hemMark, (gains.get(hemMark) ?? 0) + choice.times * gain);
    }
  }
  let best: { hemMark: number; gain: number } | undefined;
  for (const [hemMark, gain] of gains) {
    if (
      best === undefined ||
      gain > best.gain + FIT_SLACK ||
      (gain > best.gain - FIT_SLACK && hemMark > best.hemMark)
    ) {
      best = { hemMark, gain };
    }
  }
  // The first at a level shares it with nobody yet.
  if (best === undefined || best.gain <= SHARED_HEM_WORTH_MM + FIT_SLACK) return { costMm: base };
  return { hemMark: best.hemMark, costMm: base - best.gain + SHARED_HEM_WORTH_MM };
}

function solutionOf(
  problem: LineProblem,
  alike: readonly Alike[],
  { spacingMark, phaseMark, hemMark, score, picks }: Candidate,
  proven: boolean,
): LineSolution {
  const layouts = new Map<string, AlignedRows>();
  for (const [i, { ids }] of alike.entries()) {
    const pick = picks[i];
    if (pick === undefined) continue;
    const sharesRaisedHem = hemMark !== undefined && pick.hemMark === hemMark;
    for (const id of ids) layouts.set(id, { follows: pick.follows, layout: pick.layout, sharesRaisedHem });
  }
  return {
    kind: "aligned",
    spacingMm: spacingMark * problem.markMm,
    levelMm: (phaseMark ?? 0) * problem.markMm,
    ...(hemMark === undefined ? {} : { raisedHemMm: hemMark * problem.markMm }),
    layouts,
    score,
    proven,
  };
}
