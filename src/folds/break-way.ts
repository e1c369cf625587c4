import { figureRule, type Worked } from "../figures/index.ts";
import { dropFamily, type FoldCloth, type FoldStack, foldWeight } from "../mechanics/index.ts";
import { type Folds, type Form, ribCount } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";

/** How far behind the cloth the cord lifts: half a ring's wire, the cord, and what is sewn through. */
const LEVER = sourced(2.5, "mm", cite("from-memory", "1.5 to 4 mm with rings sewn close"));
/** Below 1 a fold goes backward by itself; up to here it may. */
export const SURELY_FORWARD = 2;

const FORWARD = figureRule({
  id: "folds.forward",
  label: "Couple that turns folds forward over the one that turns them back",
  symbol: "x",
  unit: "ratio",
  formula: "F·e / (t·h)",
  inputs: {
    F: [
      "N",
      "weight lifted at the row, on each metre of width",
      "ribs/kind",
      "board/bar",
      "figure:folds.start",
    ],
    e: ["mm", "how far behind the cloth the cord lifts"],
    t: ["ratio", "lean of the fold gathered below, rad", "figure:folds.out"],
    h: ["ratio", "to hold it upright, N·mm on each mm, times 1000", "figure:folds.bending-length"],
  },
  cite: cite("heavy-elastica", "cloth running on through a row without a hinge"),
  note: "at the row where it is least",
  compute: ({ F, e, t, h }) => (F * e) / (t * h),
});

/**
 * Which way folds break by themselves.
 *
 * A cord lifts behind the cloth, and that couple, F·e, turns the cloth above the row forward. Where nothing hinges at the
 * row, the cloth runs on into the fold gathered below, whose top leans forward and would turn the cloth above it backward:
 * to hold that top upright takes M = θ·√(B (9B/a² + w a)), a bent strip with the fold's own weight pulling at it (its two
 * limits: 3Bθ/a without weight, √(B·T)·θ of a long strip under tension T). A rib or a trained crease is a hinge and
 * passes nothing on.
 */
export function breakWay(
  form: Form,
  cloth: FoldCloth,
  arcsMm: readonly number[],
  stack: FoldStack,
): Worked<Folds["breaks"]> {
  if (ribCount(form) > 0 || arcsMm.length < 2) return { values: "forward", workings: [] };
  let worst = { ratio: Number.POSITIVE_INFINITY, liftN: 0, leanRad: 0, holdN: 0 };
  let liftN = cloth.skirt.weightNPerMm;
  for (let k = 1; k < arcsMm.length; k++) {
    const arcMm = arcsMm[k - 1] ?? 0;
    liftN += cloth.weightNPerMm2 * arcMm;
    const leanRad = openLean(cloth, arcMm, stack, k);
    const holdN = uprightN(cloth, arcMm / 2);
    const ratio = (liftN * LEVER.value) / (leanRad * holdN);
    if (ratio < worst.ratio) worst = { ratio, liftN, leanRad, holdN };
  }
  const forward = FORWARD.figure({
    F: worst.liftN * 1000,
    e: LEVER.value,
    t: worst.leanRad,
    h: worst.holdN * 1000,
  });
  const ratio = forward.value;
  return {
    values: ratio < 1 ? "backward" : ratio < SURELY_FORWARD ? "unsure" : "forward",
    workings: [forward],
  };
}

/** What it takes to hold the top of a fold upright, for each radian of its lean and each mm of width, N. */
export function uprightN(
  { rigidityNmm, weightNPerMm2 }: Pick<FoldCloth, "rigidityNmm" | "weightNPerMm2">,
  halfMm: number,
): number {
  return Math.sqrt(rigidityNmm * ((9 * rigidityNmm) / halfMm ** 2 + weightNPerMm2 * halfMm));
}

/** Lean of the front of the k-th fold while it is the foremost one. */
function openLean(cloth: FoldCloth, arcMm: number, stack: FoldStack, k: number): number {
  const { freeRad } = dropFamily(foldWeight(cloth, arcMm));
  return Math.max(2 * freeRad, stack.planesRad[k] ?? 0);
}
