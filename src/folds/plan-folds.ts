import { figureRule, lazy, stagedWhole, type WholeResult } from "../figures/index.ts";
import { LOFT } from "../job/index.ts";
import { fixedSkirt, foldOpening, foldWeight, stackFolds } from "../mechanics/index.ts";
import type { Folds, Form, GatheredFolds } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { GRAVITY } from "../units/index.ts";
import { breakWay } from "./break-way.ts";
import { foldArcs } from "./fold-arcs.ts";
import { foldCloth, foldLayers, isMeasured } from "./fold-cloth.ts";
import type { FoldsInput } from "./folds-input.ts";
import { hemSag } from "./hem-sag.ts";
import { judgeFolding } from "./judge-folding.ts";

/** A stack of more folds than this is taken as this deep and that many times thicker: nobody makes it. */
const MOST_FOLDS = 24;

/** The rows and the cloth between them: what decides how much hangs in a fold. */
const ROWS = ["figure:shape.*", "opening/heightsMm", "shade/mount", "shade/style"] as const;
const CLOTHS = ["shade/face", "shade/lining", "shade/interlining", "shade/blackout"] as const;

const STANDS_OUT = figureRule({
  id: "folds.out",
  label: "Raised folds stand out in front of the flat cloth",
  symbol: "f",
  unit: "mm",
  formula: "x + t / 2",
  inputs: {
    x: [
      "mm",
      "middle of the foremost fold’s cloth, where its loop is widest",
      "fold/rows",
      "fold/largestSpacingMm",
      ...ROWS,
      "figure:folds.bending-length",
      "figure:cloth.bar-mass",
      "board/section",
    ],
    t: ["mm", "thickness of all layers", ...CLOTHS],
  },
  cite: cite("heavy-elastica", "gathered folds pressed by those in front of them"),
  note: "as sewn; trained and tied they lie flatter",
  compute: ({ x, t }) => x + t / 2,
});

const TRAINED = figureRule({
  id: "folds.trained",
  label: "Depth of the stack once trained flat",
  symbol: "d_0",
  unit: "mm",
  formula: "(2·p + 2)·t·k",
  inputs: {
    p: ["count", "folds", "fold/rows", "fold/largestSpacingMm", ...ROWS],
    t: ["mm", "thickness of all layers", ...CLOTHS],
    k: ["ratio", "loft of gathered folds"],
  },
  cite: LOFT.cite,
  compute: ({ p, t, k }) => (2 * p + 2) * t * k,
});

const START = figureRule({
  id: "folds.start",
  label: "Pull that makes the first fold give way, besides the weight below it",
  symbol: "P",
  unit: "N",
  formula: "u·g·m·s·W / 10^9",
  inputs: {
    u: ["ratio", "share of the fold’s weight", "figure:folds.bending-length"],
    g: ["ratio", "standard gravity, m/s²"],
    m: ["g/m2", "mass per area of all layers", ...CLOTHS],
    s: ["mm", "cloth in the fold", "fold/rows", "fold/largestSpacingMm", ...ROWS],
    W: ["mm", "finished width", "figure:measure.finished-width"],
  },
  cite: cite("heavy-elastica", "a strip between two rows, 2 % of it slack"),
  compute: ({ u, g, m, s, W }) => (u * g * m * s * W) / 1e9,
});

/**
 * How the cloth folds: what it feels, how far folds stand out raised and on their way, what starts them, which way they
 * break, and how the hem hangs between columns. Shapes for every height come from `foldsAtHeight` when they are drawn. Cloth
 * that is drawn in across, or hangs in swags, folds in two directions at once: it has no such section.
 */
export function planFolds(input: FoldsInput): WholeResult<GatheredFolds | undefined, Folds | undefined> {
  const { form, grid, size } = input;
  const hangs = form.swags.length > 0 || (form.ease ?? []).length > 0;
  if (form.across === "gathered" || hangs) return stagedWhole(undefined, undefined, {});
  const layers = foldLayers(input.shade.cloths);
  const { cloth, bending } = foldCloth(input, layers);
  const { thicknessMm, weightNPerMm2 } = cloth;
  const arcsMm = foldArcs(grid, form).slice(0, MOST_FOLDS);
  const arcMm = arcsMm[0] ?? 0;
  const stack = stackFolds({ ...cloth, skirt: skirtOf(form, cloth), arcsMm });
  // The lowest fold on its way: what makes it give way, and how far it swings out.
  const { startShare, outShare } = foldOpening(foldWeight(cloth, arcMm));
  const standsOut = STANDS_OUT.figure({ x: stack.frontMm, t: thicknessMm });
  const trained = TRAINED.figure({ p: arcsMm.length, t: thicknessMm, k: LOFT.value });
  const start = START.figure({
    u: startShare,
    g: GRAVITY,
    m: (weightNPerMm2 / GRAVITY) * 1e9,
    s: arcMm,
    W: size.finishedWidthMm,
  });
  // No other stage reads these two; whoever does has them worked out.
  const breaks = lazy(() => breakWay(form, cloth, arcsMm, stack));
  const sag = lazy(() => hemSag(input, cloth));
  const values: GatheredFolds = {
    cloth,
    arcsMm,
    bendingMm: bending.value,
    measured: isMeasured(input.shade, layers),
    outMm: standsOut.value,
    behindMm: stack.behindMm,
    trainedMm: trained.value,
    startN: start.value,
    openOutMm: outShare * arcMm,
  };
  const whole: Folds = {
    ...values,
    get breaks() {
      return breaks().values;
    },
    get sag() {
      return sag().values;
    },
  };
  return stagedWhole(values, whole, {
    findings: () => judgeFolding(input, whole, layers),
    workings: () => [bending, standsOut, trained, start, ...breaks().workings, ...sag().workings],
  });
}

/** A soft fold over the hem holds the folds above it off, and nothing swings it back. */
function skirtOf({ stretches }: Form, cloth: Folds["cloth"]) {
  const [lowest] = stretches;
  if (lowest === undefined || lowest.clothMm - lowest.cordMm < 1) return cloth.skirt;
  const { outShare } = foldOpening(foldWeight(cloth, lowest.clothMm));
  const leanRad = Math.min(Math.PI / 3, Math.atan2(outShare * lowest.clothMm, Math.max(1, lowest.cordMm)));
  return fixedSkirt(leanRad);
}
