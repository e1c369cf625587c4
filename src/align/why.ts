import type { LineAsk } from "../shade-plan/index.ts";
import { lengthText, type UnitChoice } from "../units/index.ts";
import { placesAtSpacing, placesOnLevels, type Way } from "./choices.ts";
import type { LineProblem, LineWindow, SolvedLine } from "./line-problem.ts";

/** Settings of the folds that a window may have to let go of. */
export type WishSetting = "rows" | "spacingMm" | "skirtMm" | "hemBarMm" | "stackMm" | "rule";

/** A wish that keeps a window from the line: as the end of “… since”, and the setting that holds it. */
export interface Hindrance {
  words: string;
  /** Key of the fold settings that would have to go. */
  setting?: WishSetting;
  /** What the shade asks without it. */
  without?: (ask: LineAsk) => LineAsk;
  /** How much lower than it must the shade would hang, mm, where that alone is in the way. */
  lowerMm?: number;
}

interface Wish {
  without: (ask: LineAsk) => LineAsk;
  says: (ask: LineAsk, units: UnitChoice) => Hindrance | undefined;
}

const WISHES: readonly Wish[] = [
  {
    without: (ask) => ({ ...ask, rows: undefined }),
    says: ({ rows }) =>
      rows === undefined ? undefined : { words: `its rows are fixed at ${rows}`, setting: "rows" },
  },
  {
    without: (ask) => ({ ...ask, spacingMm: undefined }),
    says: ({ spacingMm }, units) =>
      spacingMm === undefined
        ? undefined
        : { words: `its spacing is fixed at ${lengthText(spacingMm, units)}`, setting: "spacingMm" },
  },
  {
    without: (ask) => ({ ...ask, bottomFixed: false }),
    says: ({ bottom, bottomFixed }, units) => {
      if (!bottomFixed) return undefined;
      return bottom.kind === "half-fold"
        ? { words: `its skirt is fixed at ${lengthText(bottom.skirtMm, units)}`, setting: "skirtMm" }
        : {
            words: `its hem bar section is fixed at ${lengthText(bottom.hemBarMm, units)}`,
            setting: "hemBarMm",
          };
    },
  },
  {
    without: (ask) => ({ ...ask, stackMm: undefined }),
    says: ({ stackMm }, units) =>
      stackMm === undefined
        ? undefined
        : { words: `its raised stack may be at most ${lengthText(stackMm, units)}`, setting: "stackMm" },
  },
  {
    without: (ask) => ({ ...ask, headrailFixed: false }),
    says: ({ headrailFixed }) =>
      headrailFixed
        ? { words: "its rule leaves no headrail to take up a difference", setting: "rule" }
        : undefined,
  },
];

/** Why a window is not on the levels (or, by `tier`, has not even the spacing) of a solved room. */
export function hindrance(
  problem: LineProblem,
  solution: SolvedLine,
  window: LineWindow,
  tier: "levels" | "spacing",
  units: UnitChoice,
): Hindrance {
  const { spacingMm, levelMm } = solution;
  const ways = (ask: LineAsk, within: LineProblem = problem): Way[] =>
    tier === "levels"
      ? placesOnLevels(within, { ...window, ask }, spacingMm, levelMm)
      : placesAtSpacing(within, { ...window, ask }, spacingMm);
  const { ask } = window;
  if (tier === "levels" && window.topMm === undefined) {
    return { words: "the height of its sill above the floor is not known" };
  }
  if (tier === "levels" && solution.score.levels === 0) {
    const known = problem.windows.filter(({ topMm }) => topMm !== undefined).length;
    return known < 2
      ? { words: "no other window that could follow has its height above the floor measured" }
      : { words: "no two windows can stand on one set of levels" };
  }
  for (const { without, says } of WISHES) {
    const said = says(ask, units);
    if (said !== undefined && ways(without(ask)).length > 0) return { ...said, without };
  }
  if (spacingMm > ask.largestMm) {
    return { words: `its rows may be at most ${lengthText(ask.largestMm, units)} apart` };
  }
  if (spacingMm < ask.smallestMm) {
    return { words: `its rows must be at least ${lengthText(ask.smallestMm, units)} apart` };
  }
  const [lower] = ways(ask, { ...problem, mostLowerMm: Number.POSITIVE_INFINITY });
  if (lower !== undefined) {
    const lowerMm = lower.layout.headrailExtraMm + lower.layout.bottomExtraMm;
    return { words: `it would hang ${lengthText(lowerMm, units)} lower than it must`, lowerMm };
  }
  const free = WISHES.reduce((all, { without }) => without(all), ask);
  return ways(free, { ...problem, mostLowerMm: Number.POSITIVE_INFINITY }).length > 0
    ? { words: "its fixed settings together leave no place" }
    : { words: "it is too short for such a fold" };
}
