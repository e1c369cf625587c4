import type { FoldCloth } from "../mechanics/index.ts";

/** How the cloth of a shade gathers in folds: what other stages read of them. */
export interface GatheredFolds {
  /** What a fold feels: from this every height can be drawn (`foldsAtHeight`). */
  cloth: FoldCloth;
  /** Cloth in each fold, from the lowest up, mm. */
  arcsMm: number[];
  /** Bending length of all layers together, mm. */
  bendingMm: number;
  /** Every layer was measured; otherwise it is a guess by the kind of cloth. */
  measured: boolean;
  /** Raised: how far the foremost fold stands out in front of the flat cloth, and the hem behind it, mm. */
  outMm: number;
  behindMm: number;
  /** The same folds trained and tied until they lie flat, mm. */
  trainedMm: number;
  /** How far the first fold stands out on its way, at most, mm. */
  openOutMm: number;
  /** Force at the bottom row that makes the first fold give way, besides the weight on it, N. */
  startN: number;
}

/** How the cloth of a shade folds as it is raised. */
export interface Folds extends GatheredFolds {
  /** Which way folds break by themselves. */
  breaks: "forward" | "unsure" | "backward";
  /** Between the columns. */
  sag: HemSag;
}

/** How the hem, with its bar, hangs between the columns. */
export interface HemSag {
  /** Largest sag of the bar, and how much would be seen, mm. */
  barMm: number;
  limitMm: number;
  /** The same of one rib, where there are any. */
  ribMm?: number;
  /** Fewest columns with which bar and ribs stay within that. */
  fewestColumns: number;
  /** Span that the cloth holds level by itself, without bar or rib, mm. */
  clothSpanMm: number;
}
