import { type Figure, figureRule, figureRuleOf, type Worked } from "../../figures/index.ts";
import { type Cord, STRETCH_AT_BREAK, STRETCH_PULL_N } from "../../job/index.ts";
import type { CleatCord, CordRun, CourseHeight, SpoolCord } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";

const STIFFNESS = {
  id: "lift.cord-stiffness",
  label: "Pull that would stretch the cord to twice its length",
  symbol: "E",
  unit: "N",
} as const;

const STIFFNESS_BY_STRENGTH = figureRule({
  ...STIFFNESS,
  formula: "B / s",
  inputs: { B: ["N", "breaking strength", "lift/cord"], s: ["ratio", "stretch as it breaks"] },
  cite: STRETCH_AT_BREAK.cite,
  compute: ({ B, s }) => B / s,
});

const STIFFNESS_MEASURED = figureRule({
  ...STIFFNESS,
  formula: "Q / s",
  inputs: {
    Q: ["N", "pull of the test"],
    s: ["ratio", "stretch under it, as measured", "lift/cord"],
  },
  cite: cite("maker", "measured on the cord itself"),
  compute: ({ Q, s }) => Q / s,
});

const LEVEL = figureRuleOf<{ most: number; least: number }>()({
  id: "lift.level",
  label: "Hem out of level by the stretch of the cords, at worst",
  symbol: "Δ",
  unit: "mm",
  formula: "(T·l − S·m) / E",
  inputs: {
    T: [
      "N",
      ({ most }) => `load of cord ${most}, which stretches most`,
      "figure:lift.held",
      "figure:cloth.*-mass",
      "figure:shape.columns",
    ],
    l: [
      "mm",
      "its length between ring and lock, last eye or spool",
      "figure:rig.seat-*",
      "figure:rig.cord-*-length",
    ],
    S: [
      "N",
      ({ least }) => `load of cord ${least}, which stretches least`,
      "figure:lift.held",
      "figure:shape.columns",
    ],
    m: ["mm", "its length between ring and lock, last eye or spool", "figure:rig.cord-*-length"],
    E: ["N", "pull that would stretch the cord to twice its length", "figure:lift.cord-stiffness"],
  },
  cite: cite("geometry", "stretch of each cord T·l/(EA)"),
  compute: ({ T, l, S, m, E }) => (T * l - S * m) / E,
});

/**
 * How far the hem hangs out of level because cords stretch by T·l/(EA), each by its own load and free length, mm.
 * Undefined where neither stretch nor strength of the cord is known.
 */
export function levelMm(
  cord: Cord,
  cords: readonly (CordRun | CleatCord | SpoolCord)[],
  heights: readonly CourseHeight[],
): Worked<number | undefined> {
  const { stretchAt10N, breakingN } = cord;
  // Less than a thousandth of a millimetre in a metre is none.
  if (stretchAt10N !== undefined && stretchAt10N < 1e-6) return { values: 0, workings: [] };
  const stiff = stiffness(stretchAt10N, breakingN);
  const worst = worstPair(cords, heights);
  if (stiff === undefined || worst === undefined) return { values: undefined, workings: [] };
  const [most, least] = worst;
  const level = LEVEL.figure(
    { T: most.loadN, l: most.lengthMm, S: least.loadN, m: least.lengthMm, E: stiff.value },
    { most: most.number, least: least.number },
  );
  return { values: level.value, workings: [stiff, level] };
}

function stiffness(stretchAt10N: number | undefined, breakingN: number | undefined): Figure | undefined {
  if (stretchAt10N !== undefined) return STIFFNESS_MEASURED.figure({ Q: STRETCH_PULL_N, s: stretchAt10N });
  return breakingN === undefined
    ? undefined
    : STIFFNESS_BY_STRENGTH.figure({ B: breakingN, s: STRETCH_AT_BREAK.value });
}

interface Stretched {
  number: number;
  loadN: number;
  lengthMm: number;
}

/** The two cords whose stretch differs most, at the height where it does. */
function worstPair(
  cords: readonly (CordRun | CleatCord | SpoolCord)[],
  heights: readonly CourseHeight[],
): readonly [Stretched, Stretched] | undefined {
  const loads = cords.reduce((sum, { loadN }) => sum + loadN, 0);
  if (cords.length < 2 || loads <= 0) return undefined;
  const stretched = (cord: CordRun | CleatCord | SpoolCord, { heldN, liftMm }: CourseHeight): Stretched => ({
    number: cord.number,
    loadN: (heldN * cord.loadN) / loads,
    lengthMm: Math.max(0, cord.riseMm - liftMm) + ("runMm" in cord ? cord.runMm : 0),
  });
  let best: readonly [Stretched, Stretched] | undefined;
  let gap = -1;
  for (const height of heights) {
    let [most, least]: [Stretched | undefined, Stretched | undefined] = [undefined, undefined];
    for (const cord of cords) {
      const now = stretched(cord, height);
      if (most === undefined || stretchOf(now) > stretchOf(most)) most = now;
      // Of several that stretch alike the last counts.
      if (least === undefined || stretchOf(now) <= stretchOf(least)) least = now;
    }
    if (most === undefined || least === undefined) continue;
    const apart = stretchOf(most) - stretchOf(least);
    if (apart > gap) {
      gap = apart;
      best = [most, least];
    }
  }
  return best;
}

/** For a cord of stiffness 1, N·mm. */
function stretchOf({ loadN, lengthMm }: Stretched): number {
  return loadN * lengthMm;
}
