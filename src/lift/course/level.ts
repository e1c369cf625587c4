import type { WorkingBook } from "../../figures/index.ts";
import { type ResolvedShade, STRETCH_AT_BREAK, STRETCH_PULL_N } from "../../job/index.ts";
import type { CordRun, CourseHeight, SpoolCord } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";

/**
 * How far the hem hangs out of level because cords stretch by T·l/(EA), each by its own load and free length, mm.
 * Undefined where neither stretch nor strength of the cord is known.
 */
export function levelMm(
  resolved: ResolvedShade,
  cords: readonly (CordRun | SpoolCord)[],
  heights: readonly CourseHeight[],
  book: WorkingBook,
): number | undefined {
  const { stretchAt10N, breakingN } = resolved.cord;
  if (stretchAt10N === undefined && breakingN === undefined) return undefined;
  // Less than a thousandth of a millimetre in a metre is none.
  if (stretchAt10N !== undefined && stretchAt10N < 1e-6) return 0;
  const worst = worstPair(cords, heights);
  if (worst === undefined) return undefined;
  const stiff =
    stretchAt10N === undefined
      ? book.figure("lift.cord-stiffness", {
          label: "Pull that would stretch the cord to twice its length",
          symbol: "E",
          unit: "N",
          formula: "B / s",
          given: {
            B: [breakingN ?? 0, "N", "breaking strength"],
            s: [STRETCH_AT_BREAK.value, "ratio", "stretch as it breaks"],
          },
          cite: STRETCH_AT_BREAK.cite,
          compute: ({ B, s }) => B / s,
        })
      : book.figure("lift.cord-stiffness", {
          label: "Pull that would stretch the cord to twice its length",
          symbol: "E",
          unit: "N",
          formula: "Q / s",
          given: {
            Q: [STRETCH_PULL_N, "N", "pull of the test"],
            s: [stretchAt10N, "ratio", "stretch under it, as measured"],
          },
          cite: cite("maker", "measured on the cord itself"),
          compute: ({ Q, s }) => Q / s,
        });
  const [most, least] = worst;
  return book.figure("lift.level", {
    label: "Hem out of level by the stretch of the cords, at worst",
    symbol: "Δ",
    unit: "mm",
    formula: "(T·l − S·m) / E",
    given: {
      T: [most.loadN, "N", `load of cord ${most.number}, which stretches most`],
      l: [most.lengthMm, "mm", "its length between ring and lock or spool"],
      S: [least.loadN, "N", `load of cord ${least.number}, which stretches least`],
      m: [least.lengthMm, "mm", "its length between ring and lock or spool"],
      E: [stiff, "N", "pull that would stretch the cord to twice its length"],
    },
    cite: cite("geometry", "stretch of each cord T·l/(EA)"),
    compute: ({ T, l, S, m, E }) => (T * l - S * m) / E,
  });
}

interface Stretched {
  number: number;
  loadN: number;
  lengthMm: number;
}

/** The two cords whose stretch differs most, at the height where it does. */
function worstPair(
  cords: readonly (CordRun | SpoolCord)[],
  heights: readonly CourseHeight[],
): readonly [Stretched, Stretched] | undefined {
  const loads = cords.reduce((sum, { loadN }) => sum + loadN, 0);
  if (cords.length < 2 || loads <= 0) return undefined;
  const runMm = (cord: CordRun | SpoolCord) => ("runMm" in cord ? cord.runMm : 0);
  let best: readonly [Stretched, Stretched] | undefined;
  let gap = -1;
  for (const { heldN, liftMm } of heights) {
    const stretched = cords
      .map((cord) => ({
        number: cord.number,
        loadN: (heldN * cord.loadN) / loads,
        lengthMm: Math.max(0, cord.riseMm - liftMm) + runMm(cord),
      }))
      .sort((a, b) => b.loadN * b.lengthMm - a.loadN * a.lengthMm);
    const [most, least] = [stretched[0], stretched.at(-1)];
    if (most === undefined || least === undefined) continue;
    const now = most.loadN * most.lengthMm - least.loadN * least.lengthMm;
    if (now > gap) [gap, best] = [now, [most, least]];
  }
  return best;
}
