import type { LineProblem, LineScore, LineWindow } from "../../src/align/index.ts";
import { inches } from "../../src/units/index.ts";

/** One way for one window: what the objective counts of it. */
interface Way {
  levels: number;
  follows: number;
  costMm: number;
  extraMm: number;
  /** Raised hem, in marks above the floor. */
  hem?: number;
}

/**
 * The best score of a room by trying everything: each spacing, each phase, each number of rows of each window,
 * and every combination of those. It shares no code with the solver; the objective is that of
 * docs/decisions/2026-11-25-a-room-in-line.md.
 */
export function everyLine(problem: LineProblem): LineScore | undefined {
  const { markMm, windows } = problem;
  const spacings =
    problem.spacingMm === undefined
      ? upTo(Math.floor(Math.max(...windows.map(({ ask }) => ask.largestMm)) / markMm))
      : [Math.round(problem.spacingMm / markMm)];
  let best: LineScore | undefined;
  for (const spacing of spacings) {
    for (const phase of [undefined, ...upTo(spacing)]) {
      const ways = windows.map((window) => waysOf(problem, window, spacing * markMm, phase));
      for (const chosen of combinations(ways)) {
        const score = scoreOf(problem, chosen);
        if (score.levels === 1) continue;
        if (best === undefined || better(score, best)) best = score;
      }
    }
  }
  return best;
}

const upTo = (most: number) => Array.from({ length: most }, (_, i) => i + 1);

function waysOf(problem: LineProblem, window: LineWindow, s: number, phase: number | undefined): Way[] {
  const { ask, topMm, own } = window;
  const { markMm } = problem;
  const ways: Way[] = [{ levels: 0, follows: 0, costMm: own.raisedMm + inches(own.rows / 2), extraMm: 0 }];
  if (s > ask.largestMm + 1e-6 || s < ask.smallestMm - 1e-6) return ways;
  if (ask.spacingMm !== undefined && Math.abs(s - ask.spacingMm) > markMm / 2 + 1e-6) return ways;
  const wanted = ask.bottom.kind === "half-fold" ? ask.bottom.skirtMm + s / 2 : ask.bottom.hemBarMm;
  const below = (d: number) =>
    ask.bottom.kind === "half-fold" ? d : ask.bottom.ringStackMm + Math.max(s / 2, d);
  const tryWay = (rows: number, d: number, levels: number) => {
    const headrail = ask.lengthMm - d - rows * s;
    const raised = headrail + below(d);
    const fits =
      d >= wanted - 1e-6 &&
      headrail >= ask.leastHeadrailMm - 1e-6 &&
      rows * s >= ask.leastGatheredMm - 1e-6 &&
      (ask.rows === undefined || ask.rows === rows) &&
      !(ask.headrailFixed && headrail - ask.leastHeadrailMm >= markMm - 1e-6) &&
      !(ask.bottomFixed && d - wanted >= markMm - 1e-6) &&
      headrail - ask.leastHeadrailMm + d - wanted <= problem.mostLowerMm + 1e-6 &&
      (ask.stackMm === undefined || raised <= ask.stackMm + 1e-6);
    if (!fits) return;
    const gave = headrail - ask.leastHeadrailMm + d - wanted;
    ways.push({
      levels,
      follows: 1,
      costMm: ask.leastHeadrailMm + below(wanted) + gave * (1 + gave / inches(4)) + inches(rows / 2),
      extraMm: Math.max(0, d - wanted),
      ...(topMm === undefined ? {} : { hem: Math.round((topMm - raised) / markMm + 1e-9) }),
    });
  };
  for (let rows = 1; rows * s <= ask.lengthMm; rows++) {
    tryWay(rows, ask.headrailFixed ? ask.lengthMm - ask.leastHeadrailMm - rows * s : wanted, 0);
    if (phase === undefined || topMm === undefined || problem.folds !== "levels") continue;
    // The first row is on the lowest level that leaves the hem section as long as it is wanted.
    const hem = topMm - ask.lengthMm;
    let level = phase * markMm - 40 * s;
    while (level < hem + wanted - 1e-6) level += s;
    tryWay(rows, Math.max(wanted, level - hem), 1);
  }
  return ways;
}

function* combinations(ways: readonly Way[][], chosen: Way[] = []): Generator<Way[]> {
  const next = ways[chosen.length];
  if (next === undefined) yield chosen;
  else for (const way of next) yield* combinations(ways, [...chosen, way]);
}

function scoreOf({ stack }: LineProblem, chosen: readonly Way[]): LineScore {
  const sum = (of: (way: Way) => number) => chosen.reduce((total, way) => total + of(way), 0);
  const hems = chosen.flatMap(({ hem }) => (hem === undefined ? [] : [hem]));
  const sharing = Math.max(0, ...hems.map((hem) => hems.filter((other) => other === hem).length));
  return {
    levels: sum((way) => way.levels),
    followers: sum((way) => way.follows),
    costMm: sum((way) => way.costMm) - (stack && sharing > 1 ? (sharing - 1) * inches(2) : 0),
    bottomExtraMm: sum((way) => way.extraMm),
  };
}

function better(a: LineScore, b: LineScore): boolean {
  if (a.levels !== b.levels) return a.levels > b.levels;
  if (a.followers !== b.followers) return a.followers > b.followers;
  if (Math.abs(a.costMm - b.costMm) > 1e-6) return a.costMm < b.costMm;
  return a.bottomExtraMm < b.bottomExtraMm - 1e-6;
}
