import type { FitMasks } from "./fit-masks.ts";

/** Turns an order of preference into places on the cloth. */
export interface Decoder {
  readonly masks: FitMasks;
  /** A choice of each item, below `choices`; what it decides is the decoder's own business. */
  readonly bits: Uint8Array;
  readonly choices: number;
  /** Lot that each lot group is held to, by number; −1: whichever comes first. */
  readonly chosenLots: Int32Array;
  /** Lots that each lot group may be held to. */
  readonly lotChoices: readonly (readonly number[])[];
  /** Length that may be cut from each bolt, in steps, without the gap. */
  setLengths(lengths: ArrayLike<number>): void;
  /**
   * Lays all items. Gives `ALL_LAID`, or the area lost, in steps squared, as soon as it exceeds `limit`: a plan so
   * broken off has no places.
   */
  lay(limit: number): number;
  /** Upper left corners and bolt by item, after a `lay` that came to its end; bolt −1: left over. */
  readonly x: Int32Array;
  readonly y: Float64Array;
  readonly bolt: Int16Array;
}

export const ALL_LAID = -1;
