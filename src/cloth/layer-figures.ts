import { type FigureInput, figureRuleOf } from "../figures/index.ts";
import type { HalfDropRule } from "../job/index.ts";
import { LAYER_NAMES, type Layer } from "../shade-plan/index.ts";
import { type Cite, cite } from "../sources/index.ts";
import { type Allowance, beforeShrinkingMm } from "./make-up.ts";
import { repeatLengthMm } from "./repeats.ts";

const WHOLE_REPEATS = cite("curtain-encyclopaedia", "pp. 116–119");
const HALF_DROP_SOURCES: Record<HalfDropRule, Cite> = {
  "whole-repeat-per-order": cite("half-drop-tutorial"),
  "half-repeat-if-needed": cite("half-drop-faq"),
};

/** What the style adds to the finished size, across and along. */
const STYLE_ACROSS = [
  "figure:shape.flat-width",
  "figure:shape.gathered-width",
  "figure:shape.extra-width",
  "gather/widthFullness",
  "gather/drawInMm",
];
const STYLE_ALONG = [
  "figure:shape.flat-length",
  "figure:shape.hobble-more",
  "figure:shape.tuck-cloth",
  "figure:shape.bottom-section",
  "gather/lengthFullness",
  "gather/hemExtraMm",
  "pouf/marks",
  "pouf/clothMm",
];
const POCKETS = ["ribs/kind", "ribs/pocketMm", "ribs/at", "figure:shape.*"];
const LINING_ACROSS = ["lining/widthOverFinishedMm", "hems/makeUp", "hems/seamMm"];
const LINING_ALONG = [
  "lining/lengthOverFinishedMm",
  "lining/squaringMm",
  "hems/bottomTurnMm",
  "hems/bottomTurns",
  "hems/makeUp",
  "hems/seamMm",
];
const ACROSS_BEHIND: Record<Layer, readonly string[]> = {
  face: ["hems/sideTurnMm", "hems/sideTurns", "hems/makeUp", "hems/seamMm"],
  interlining: ["lining/innerNarrowerMm", "lining/interliningCut", ...LINING_ACROSS],
  blackout: ["lining/innerNarrowerMm", "lining/blackoutCut", ...LINING_ACROSS],
  lining: LINING_ACROSS,
};
const ALONG_BEHIND: Record<Layer, readonly string[]> = {
  face: [
    "hems/bottomTurnMm",
    "hems/bottomTurns",
    "hems/boardAllowanceMm",
    "hems/makeUp",
    "hems/seamMm",
    "banding/bottomBandMm",
  ],
  interlining: ["lining/innerLongerMm", "lining/interliningCut", ...LINING_ALONG],
  blackout: ["lining/innerLongerMm", "lining/blackoutCut", ...LINING_ALONG],
  lining: LINING_ALONG,
};
const ROUND_BOARD = ["board/returns", "board/section", "shade/mount"];
const AT_BOARD = ["hems/boardAllowanceMm", "board/attachment", "board/section", "shade/lining"];

/** A cut layer: what is added to its finished size, and what bow and skew take off for each millimetre of width. */
interface Cut {
  layer: Layer;
  added: readonly Allowance[];
  slantShare: number;
}

const turnedBy = (layer: Layer) => (layer === "face" ? "pattern/railroad" : "lining/railroad");

function addedBy(key: "widthMm" | "lengthMm") {
  return ({ added }: Cut): string =>
    added
      .filter((one) => one[key] !== 0)
      .map(({ label }) => label)
      .join(", ") || "no allowance";
}

function citeCut(key: "widthMm" | "lengthMm") {
  return ({ added, slantShare }: Cut): Cite =>
    added.some((one) => one.label === "bow and skew" && one[key] > 0)
      ? cite("astm-d3882", `bow and skew: ${100 * slantShare} % of the width`)
      : cite("hem-guides", "allowances vary: each is a setting");
}

const shrinks = ({ layer }: Cut): FigureInput<Cut> => [
  "ratio",
  "shrinkage still to come",
  `shade/${layer}`,
  turnedBy(layer),
];

/** Cut width of one layer, mm: W with its allowances, before what it still shrinks. */
export const CUT_WIDTH = figureRuleOf<Cut>()({
  id: ({ layer }) => `cloth.${layer}-cut-width`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: cut width`,
  symbol: "C_w",
  unit: "mm",
  formula: "(W + a) / (1 − z)",
  inputs: (cut) => ({
    W: ["mm", "finished width", "figure:measure.finished-width"],
    a: ["mm", addedBy("widthMm"), ...ACROSS_BEHIND[cut.layer], ...ROUND_BOARD, ...STYLE_ACROSS],
    z: shrinks(cut),
  }),
  cite: citeCut("widthMm"),
  compute: ({ W, a, z }) => beforeShrinkingMm(W + a, z),
});

/** Cut length of one layer, mm: L with its allowances, before what it still shrinks. */
export const CUT_LENGTH = figureRuleOf<Cut>()({
  id: ({ layer }) => `cloth.${layer}-cut-length`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: cut length`,
  symbol: "C_l",
  unit: "mm",
  formula: "(L + a) / (1 − z)",
  inputs: (cut) => ({
    L: ["mm", "finished length", "figure:measure.finished-length"],
    a: ["mm", addedBy("lengthMm"), ...ALONG_BEHIND[cut.layer], ...AT_BOARD, ...STYLE_ALONG, ...POCKETS],
    z: shrinks(cut),
  }),
  restsOn: ["hems/joins"],
  cite: citeCut("lengthMm"),
  compute: ({ L, a, z }) => beforeShrinkingMm(L + a, z),
});

interface OfLayer {
  layer: Layer;
}

/** Length of one drop raised to whole repeats, mm. */
export const REPEAT_LENGTH = figureRuleOf<OfLayer>()({
  id: ({ layer }) => `cloth.${layer}-repeat-length`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: length raised to whole repeats`,
  symbol: "C_r",
  unit: "mm",
  formula: "ceil(C / R) · R",
  inputs: ({ layer }) => ({
    C: ["mm", "cut length", turnedBy(layer), `figure:cloth.${layer}-cut-*`],
    R: ["mm", "repeat along the bolt", `shade/${layer}`],
  }),
  cite: cite("curtain-encyclopaedia", "pp. 116–119: round up, never down"),
  compute: ({ C, R }) => repeatLengthMm(C, R),
});

/** Cloth before the first cut, where the pattern must fall in its place, mm. */
export const START = figureRuleOf<OfLayer>()({
  id: ({ layer }) => `cloth.${layer}-start`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: from the beginning of a repeat to the first cut`,
  symbol: "q",
  unit: "mm",
  formula: "R − h",
  inputs: ({ layer }) => ({
    R: ["mm", "repeat along the bolt", `shade/${layer}`],
    h: [
      "mm",
      "from the first cut to where the next repeat begins",
      "pattern/place",
      "pattern/offsetMm",
      "pattern/across",
      "pattern/acrossMm",
      turnedBy(layer),
      "hems/joins",
      `figure:cloth.${layer}-cut-*`,
    ],
  }),
  cite: cite("geometry", "so that the motif falls where it is placed"),
  compute: ({ R, h }) => R - h,
});

interface OffBolt {
  layer: Layer;
  /** The rule for a half drop, where it asks for more cloth. */
  halfDrop?: HalfDropRule;
}

/** Length that leaves the bolt for one layer, mm. */
export const BOLT_LENGTH = figureRuleOf<OffBolt>()({
  id: ({ layer }) => `cloth.${layer}-length`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: length off the bolt`,
  symbol: "Q",
  unit: "mm",
  formula: "max(n·C + x, E)",
  inputs: ({ layer }) => ({
    n: [
      "count",
      "widths",
      turnedBy(layer),
      "pattern/across",
      "hems/joins",
      "hems/seamMm",
      `shade/${layer}`,
      // Joins may come under columns or pleats, and a face may be cut apart at them.
      "figure:shape.*",
    ],
    C: ["mm", "length of one width", `figure:cloth.${layer}-cut-*`],
    x: ["mm", "extra for half drop and placing", "pattern/halfDropRule", "pattern/placementRepeat"],
    E: [
      "mm",
      "end of the last piece as it lies on the bolt",
      "pattern/place",
      "pattern/offsetMm",
      "pattern/acrossMm",
      "figure:shape.*",
    ],
  }),
  cite: ({ halfDrop }) => (halfDrop === undefined ? WHOLE_REPEATS : HALF_DROP_SOURCES[halfDrop]),
  compute: ({ n, C, x, E }) => Math.max(n * C + x, E),
});

/** Everything that pieces beside the panels may follow from. */
const BESIDE = [
  "board/coverFrom",
  "board/returns",
  "board/dustStripMm",
  "banding/where",
  "banding/widthMm",
  "banding/insetMm",
  "banding/turnMm",
  "banding/corners",
  "banding/bottomBandMm",
  "shade/banding",
  "shade/bottomBand",
  "ribs/kind",
  "ribs/face",
  "ribs/at",
  "lift/rearCords",
  "hems/makeUp",
  "hems/sideTurnMm",
  "hems/sideTurns",
  "hems/bottomTurnMm",
  "hems/bottomTurns",
  "hems/seamMm",
  "hems/boardAllowanceMm",
  "shade/lining",
  "figure:cloth.cover-*",
  "figure:cloth.return-*",
  "figure:cloth.dust-strip-width",
  "figure:cloth.sleeve-*",
  "gather/frillEdges",
  "figure:shape.frill",
  "figure:cloth.frill-cut-depth",
];

/** What is bought for one layer and the pieces beside it, mm: raised to the step in which the cloth is sold. */
export const BUY = figureRuleOf<OfLayer>()({
  id: ({ layer }) => `cloth.${layer}-buy`,
  label: ({ layer }) => `${LAYER_NAMES[layer]}: length to buy, cut by itself`,
  symbol: "Q_b",
  unit: "mm",
  formula: "ceil((Q + t) / s) · s",
  inputs: ({ layer }) => ({
    Q: ["mm", "length off the bolt", `figure:cloth.${layer}-length`],
    t: ["mm", "strips, bands and covers that find no room beside the panels", ...BESIDE],
    s: ["mm", "step in which it is sold", `shade/${layer}`],
  }),
  cite: cite("arithmetic"),
  compute: ({ Q, t, s }) => Math.ceil((Q + t) / s - 1e-9) * s,
});

/** What is bought of a cloth that only bands or strips are cut from, mm. */
export const OWN_BUY = figureRuleOf<{ clothId: string; clothName: string }>()({
  id: ({ clothId }) => `cloth.trims-${clothId}-buy`,
  label: ({ clothName }) => `${clothName}: length to buy, cut by itself`,
  symbol: "Q_b",
  unit: "mm",
  formula: "ceil(Q / s) · s",
  inputs: {
    Q: ["mm", "length that its pieces take", ...BESIDE, "figure:shape.*", "figure:measure.finished-*"],
    s: ["mm", "step in which it is sold", "shade/banding", "shade/bottomBand"],
  },
  cite: cite("arithmetic"),
  compute: ({ Q, s }) => Math.ceil(Q / s - 1e-9) * s,
});
