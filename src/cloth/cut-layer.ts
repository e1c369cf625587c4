import type { WorkingBook } from "../account/index.ts";
import type { Brief, Cloth, HalfDropRule } from "../job/index.ts";
import { LAYER_NAMES, type Layer, type LayerCut, type Panel, type Size } from "../shade/index.ts";
import { type Cite, cite } from "../sources/index.ts";
import { inches, MM_PER_YARD, SAME_LENGTH_MM } from "../units/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import { type Joined, joinWidths, seamThatFitsMm } from "./joins.ts";
import { layDrops } from "./lay-drops.ts";
import { allowances, beforeShrinkingMm } from "./make-up.ts";
import { halfDropExtraMm, repeatLengthMm } from "./repeats.ts";

/** Step in which cloth is sold where the cloth does not say: an eighth of a yard, or 10 cm. */
export function soldByMm(cloth: Cloth, brief: Brief): number {
  return cloth.soldByMm ?? (brief.units.system === "imperial" ? MM_PER_YARD / 8 : 100);
}

const WHOLE_REPEATS = cite("curtain-encyclopaedia", "pp. 116–119");
const HALF_DROP_SOURCES: Record<HalfDropRule, Cite> = {
  "whole-repeat-per-order": cite("half-drop-tutorial"),
  "half-repeat-if-needed": cite("half-drop-faq"),
};

/** Cut size, panels, place on the bolt and length to buy for one layer. */
export function cutLayer(
  { brief, size, form }: ClothInput,
  layer: Layer,
  cloth: Cloth,
  book: WorkingBook,
): LayerCut {
  const added = allowances(brief, form, layer);
  const cutWidthMm = writeCut(book, layer, "width", size.finishedWidthMm, added, cloth.shrinkWidth);
  const cutLengthMm = writeCut(book, layer, "length", size.finishedLengthMm, added, cloth.shrinkLength);

  const seamMm = seamThatFitsMm(brief.making.hems.seamMm, cloth.usableWidthMm);
  const joined = joinWidths(cutWidthMm, cloth.usableWidthMm, seamMm);
  const panels = namePanels(layer, joined, cutLengthMm);
  const repeat = cloth.repeat;
  const pitchMm =
    repeat === undefined ? cutLengthMm : writeRepeat(book, layer, cutLengthMm, repeat.verticalMm);
  const rule = brief.making.pattern.halfDropRule;
  const halfDropMm = repeat === undefined ? 0 : halfDropExtraMm(repeat, cutLengthMm, joined.drops, rule);
  const placementMm = repeat !== undefined && brief.making.pattern.placementRepeat ? repeat.verticalMm : 0;
  const extraMm = halfDropMm + placementMm;
  const { lays, lengthMm: laidMm } = layDrops(panels, {
    usableWidthMm: cloth.usableWidthMm,
    cutLengthMm,
    pitchMm,
    halfDropMm: repeat?.match === "half-drop" && joined.drops > 1 ? repeat.verticalMm / 2 : 0,
    sidesShareDrop: joined.sidesShareDrop,
  });
  const lengthMm = Math.max(
    laidMm,
    writeLength(
      book,
      layer,
      joined.drops,
      pitchMm,
      extraMm,
      halfDropMm > 0 ? HALF_DROP_SOURCES[rule] : WHOLE_REPEATS,
    ),
  );
  const stepMm = soldByMm(cloth, brief);

  return {
    layer,
    clothId: cloth.id,
    clothName: cloth.name,
    cutWidthMm,
    cutLengthMm,
    repeatLengthMm: pitchMm,
    usableWidthMm: cloth.usableWidthMm,
    widths: joined.drops,
    panels,
    lays,
    lengthMm,
    buyMm: writeBuy(book, layer, lengthMm, stepMm),
    makeUp: [
      { label: "finished", widthMm: size.finishedWidthMm, lengthMm: size.finishedLengthMm },
      ...added,
      ...shrinkage(size, added, cutWidthMm, cutLengthMm),
    ],
    ...(repeat === undefined ? {} : { repeatMm: repeat.verticalMm, match: repeat.match }),
  };
}

type Added = ReturnType<typeof allowances>;

function shrinkage(size: Size, added: Added, cutWidthMm: number, cutLengthMm: number): Added {
  const widthMm = Math.max(0, cutWidthMm - size.finishedWidthMm - sumOf(added, "widthMm"));
  const lengthMm = Math.max(0, cutLengthMm - size.finishedLengthMm - sumOf(added, "lengthMm"));
  return Math.max(widthMm, lengthMm) > SAME_LENGTH_MM ? [{ label: "shrinkage", widthMm, lengthMm }] : [];
}

function sumOf(added: Added, key: "widthMm" | "lengthMm"): number {
  return added.reduce((total, allowance) => total + allowance[key], 0);
}

function namePanels(layer: Layer, joined: Joined, lengthMm: number): Panel[] {
  const count = joined.panels.length;
  return joined.panels.map((panel, i) => ({
    id: `${layer}-${i + 1}`,
    label: count === 1 ? LAYER_NAMES[layer] : `${LAYER_NAMES[layer]} ${i + 1} of ${count}`,
    widthMm: panel.widthMm,
    lengthMm,
    joinedXMm: panel.joinedXMm,
    full: panel.full,
  }));
}

function writeCut(
  book: WorkingBook,
  layer: Layer,
  way: "width" | "length",
  finishedMm: number,
  added: Added,
  shrink: number | undefined,
): number {
  const key = way === "width" ? "widthMm" : "lengthMm";
  const names = added.filter((allowance) => allowance[key] > 0).map((allowance) => allowance.label);
  const finished = way === "width" ? "W" : "L";
  return book.figure(`cloth.${layer}-cut-${way}`, {
    label: `${LAYER_NAMES[layer]}: cut ${way}`,
    symbol: way === "width" ? "C_w" : "C_l",
    unit: "mm",
    formula: `(${finished} + a) / (1 − z)`,
    given: {
      [finished]: [finishedMm, "mm", `finished ${way}`],
      a: [sumOf(added, key), "mm", names.length > 0 ? names.join(", ") : "no allowance"],
      z: [shrink ?? 0, "ratio", "shrinkage still to come"],
    },
    cite: cite("hem-guides", "allowances vary: each is a setting"),
    reckon: (v) => beforeShrinkingMm((v[finished] ?? 0) + (v.a ?? 0), v.z),
  });
}

function writeRepeat(book: WorkingBook, layer: Layer, cutLengthMm: number, verticalMm: number): number {
  return book.figure(`cloth.${layer}-repeat-length`, {
    label: `${LAYER_NAMES[layer]}: length raised to whole repeats`,
    symbol: "C_r",
    unit: "mm",
    formula: "ceil(C / R) · R",
    given: {
      C: [cutLengthMm, "mm", "cut length"],
      R: [verticalMm, "mm", "vertical repeat"],
    },
    cite: cite("curtain-encyclopaedia", "pp. 116–119: round up, never down"),
    reckon: ({ C, R }) => repeatLengthMm(C, R),
  });
}

function writeLength(
  book: WorkingBook,
  layer: Layer,
  drops: number,
  pitchMm: number,
  extraMm: number,
  from: Cite,
): number {
  return book.figure(`cloth.${layer}-length`, {
    label: `${LAYER_NAMES[layer]}: length off the bolt`,
    symbol: "Q",
    unit: "mm",
    formula: "n·C + x",
    given: {
      n: [drops, "count", "widths"],
      C: [pitchMm, "mm", "length of one width"],
      x: [extraMm, "mm", "extra for half drop and placing"],
    },
    cite: from,
    reckon: ({ n, C, x }) => n * C + x,
  });
}

function writeBuy(book: WorkingBook, layer: Layer, lengthMm: number, stepMm: number): number {
  return book.figure(`cloth.${layer}-buy`, {
    label: `${LAYER_NAMES[layer]}: length to buy`,
    symbol: "Q_b",
    unit: "mm",
    formula: "ceil(Q / s) · s",
    given: {
      Q: [lengthMm, "mm", "length off the bolt"],
      s: [stepMm, "mm", "step in which it is sold"],
    },
    cite: cite("arithmetic"),
    reckon: ({ Q, s }) => Math.ceil(Q / s - 1e-9) * s,
  });
}

/** Strips for pockets that are cut apart: 3 in wide, half an inch shorter than the shade (“Roman blinds”, 2012). */
export const STRIP_WIDTH_MM = inches(3);
export const STRIP_SHORTER_MM = inches(0.5);
