import type { WorkingBook } from "../figures/index.ts";
import type { Cloth, HalfDropRule } from "../job/index.ts";
import { LAYER_NAMES, type Layer } from "../shade-plan/index.ts";
import { type Cite, cite } from "../sources/index.ts";
import type { LayerShape } from "./layer-shape.ts";
import { shrinkOf, slantShare } from "./layer-shape.ts";
import { beforeShrinkingMm, sumOf } from "./make-up.ts";
import type { OffTheBolt } from "./off-the-bolt.ts";
import { repeatLengthMm } from "./repeats.ts";

const WHOLE_REPEATS = cite("curtain-encyclopaedia", "pp. 116–119");
const HALF_DROP_SOURCES: Record<HalfDropRule, Cite> = {
  "whole-repeat-per-order": cite("half-drop-tutorial"),
  "half-repeat-if-needed": cite("half-drop-faq"),
};

/** Cut width or cut length of one layer. */
export function writeCut(
  book: WorkingBook,
  layer: Layer,
  way: "width" | "length",
  finishedMm: number,
  shape: LayerShape,
  cloth: Cloth,
): number {
  const key = way === "width" ? "widthMm" : "lengthMm";
  const names = shape.added.filter((one) => one[key] !== 0).map((one) => one.label);
  const finished = way === "width" ? "W" : "L";
  const slanted = shape.added.some((one) => one.label === "bow and skew" && one[key] > 0);
  return book.figure(`cloth.${layer}-cut-${way}`, {
    label: `${LAYER_NAMES[layer]}: cut ${way}`,
    symbol: way === "width" ? "C_w" : "C_l",
    unit: "mm",
    formula: `(${finished} + a) / (1 − z)`,
    given: {
      [finished]: [finishedMm, "mm", `finished ${way}`],
      a: [sumOf(shape.added, key), "mm", names.length > 0 ? names.join(", ") : "no allowance"],
      z: [shrinkOf(cloth, shape.turned)[way], "ratio", "shrinkage still to come"],
    },
    cite: slanted
      ? cite("astm-d3882", `bow and skew: ${100 * slantShare(cloth)} % of the width`)
      : cite("hem-guides", "allowances vary: each is a setting"),
    compute: (v) => beforeShrinkingMm((v[finished] ?? 0) + (v.a ?? 0), v.z),
  });
}

export function writeRepeat(book: WorkingBook, layer: Layer, cutMm: number, verticalMm: number): number {
  return book.figure(`cloth.${layer}-repeat-length`, {
    label: `${LAYER_NAMES[layer]}: length raised to whole repeats`,
    symbol: "C_r",
    unit: "mm",
    formula: "ceil(C / R) · R",
    given: { C: [cutMm, "mm", "cut length"], R: [verticalMm, "mm", "repeat along the bolt"] },
    cite: cite("curtain-encyclopaedia", "pp. 116–119: round up, never down"),
    compute: ({ C, R }) => repeatLengthMm(C, R),
  });
}

export function writeLength(
  book: WorkingBook,
  layer: Layer,
  shape: LayerShape,
  { pitchMm, halfDropMm, placementMm }: OffTheBolt,
  rule: HalfDropRule,
): number {
  return book.figure(`cloth.${layer}-length`, {
    label: `${LAYER_NAMES[layer]}: length off the bolt`,
    symbol: "Q",
    unit: "mm",
    formula: "max(n·C + x, E)",
    given: {
      n: [shape.drops, "count", "widths"],
      C: [pitchMm, "mm", "length of one width"],
      x: [halfDropMm + placementMm, "mm", "extra for half drop and placing"],
      E: [shape.laidMm, "mm", "end of the last piece as it lies on the bolt"],
    },
    cite: halfDropMm > 0 ? HALF_DROP_SOURCES[rule] : WHOLE_REPEATS,
    compute: ({ n, C, x, E }) => Math.max(n * C + x, E),
  });
}

/** `beyondMm`: what the pieces beside the panels take of the same cloth beyond them. */
export function writeBuy(
  book: WorkingBook,
  layer: Layer,
  lengthMm: number,
  beyondMm: number,
  stepMm: number,
): number {
  return book.figure(`cloth.${layer}-buy`, {
    label: `${LAYER_NAMES[layer]}: length to buy`,
    symbol: "Q_b",
    unit: "mm",
    formula: "ceil((Q + t) / s) · s",
    given: {
      Q: [lengthMm, "mm", "length off the bolt"],
      t: [beyondMm, "mm", "strips, bands and covers that find no room beside the panels"],
      s: [stepMm, "mm", "step in which it is sold"],
    },
    cite: cite("arithmetic"),
    compute: ({ Q, t, s }) => Math.ceil((Q + t) / s - 1e-9) * s,
  });
}

/** Of a cloth that only bands or strips are cut from. */
export function writeOwnBuy(book: WorkingBook, cloth: Cloth, lengthMm: number, stepMm: number): number {
  return book.figure(`cloth.trims-${cloth.id}-buy`, {
    label: `${cloth.name}: length to buy`,
    symbol: "Q_b",
    unit: "mm",
    formula: "ceil(Q / s) · s",
    given: {
      Q: [lengthMm, "mm", "length that its pieces take"],
      s: [stepMm, "mm", "step in which it is sold"],
    },
    cite: cite("arithmetic"),
    compute: ({ Q, s }) => Math.ceil(Q / s - 1e-9) * s,
  });
}

/** Cloth before the first cut, where the pattern must fall in its place. */
export function writeStart(book: WorkingBook, layer: Layer, shape: LayerShape, repeatMm: number): number {
  const fromTopMm = repeatMm - shape.startWasteMm;
  return book.figure(`cloth.${layer}-start`, {
    label: `${LAYER_NAMES[layer]}: from the beginning of a repeat to the first cut`,
    symbol: "q",
    unit: "mm",
    formula: "R − h",
    given: {
      R: [repeatMm, "mm", "repeat along the bolt"],
      h: [fromTopMm, "mm", "from the first cut to where the next repeat begins"],
    },
    cite: cite("geometry", "so that the motif falls where it is placed"),
    compute: ({ R, h }) => R - h,
  });
}
