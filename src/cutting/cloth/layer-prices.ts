import { pricePattern } from "../lengths/price-pattern.ts";

/** Pieces of one size, and how many are wanted. */
export interface PieceType {
  w: number;
  h: number;
  /** Lies turned by a quarter: a second way to meet the same demand. */
  turned: boolean;
  /** Row of the demand that it meets. */
  row: number;
}

/** One layer: columns side by side, each a stack of pieces that are no wider than the column. */
export interface LayerPattern {
  length: number;
  columns: { width: number; types: number[] }[];
}

/** Cells of the table of stacks. */
const MOST_CELLS = 1200;
const MOST_NODES = 4000;

/**
 * The layers of greatest worth, for all lengths of layer at once. A table tells the worth of the best stack for each
 * width of column and each height (knapsack by dynamic programming, two-stage patterns after Gilmore and Gomory,
 * Operations Research 13, 1965); a second knapsack sets columns side by side. Heights are rounded down to the cells of
 * the table, and a stack that turns out too high is left out.
 */
export class LayerPrices {
  private readonly types: readonly PieceType[];
  private readonly order: readonly number[];
  private readonly groups: { width: number; types: number[] }[] = [];
  private readonly cell: number;
  private readonly cells: number;
  private readonly worth: Float64Array[];
  /** By type: the heights at which it made the best stack better when it was looked at. */
  private readonly took: Uint8Array[];
  private readonly width: number;
  private wanted: ArrayLike<number> = [];

  constructor(types: readonly PieceType[], width: number, longest: number) {
    this.types = types;
    this.width = width;
    this.cell = Math.max(1, longest / MOST_CELLS);
    this.cells = Math.floor(longest / this.cell) + 1;
    this.order = Array.from(types.keys()).sort((a, b) => this.typeAt(a).w - this.typeAt(b).w);
    for (const type of this.order) {
      const { w } = this.typeAt(type);
      const group = this.groups[this.groups.length - 1];
      if (group?.width === w) group.types.push(type);
      else this.groups.push({ width: w, types: [type] });
    }
    this.worth = this.groups.map(() => new Float64Array(this.cells));
    this.took = types.map(() => new Uint8Array(this.cells));
  }

  private typeAt(type: number): PieceType {
    return this.types[type] as PieceType;
  }

  /** Works the table of stacks out for new worths of the rows, and how many of each are wanted. */
  setWorths(rows: ArrayLike<number>, wanted: ArrayLike<number>): void {
    this.wanted = wanted;
    let before: Float64Array | undefined;
    this.groups.forEach(({ types }, k) => {
      const worth = this.worth[k] as Float64Array;
      if (before) worth.set(before);
      else worth.fill(0);
      for (const type of types) {
        const { row } = this.typeAt(type);
        const count = wanted[row] ?? 0;
        const value = rows[row] ?? 0;
        const took = (this.took[type] as Uint8Array).fill(0);
        if (value <= 0 || count < 1) continue;
        if (this.isOnce(type)) this.addOnce(worth, took, this.sizeOf(type), value);
        else this.addOften(worth, took, this.sizeOf(type), value);
      }
      before = worth;
    });
  }

  /** Wanted once more: a stack holds it once. */
  private isOnce(type: number): boolean {
    return this.wanted[this.typeAt(type).row] === 1;
  }

  /** Height in cells. */
  private sizeOf(type: number): number {
    return Math.max(1, Math.floor(this.typeAt(type).h / this.cell));
  }

  private addOften(worth: Float64Array, took: Uint8Array, size: number, value: number): void {
    for (let c = size; c < worth.length; c++) {
      const sum = (worth[c - size] as number) + value;
      if (sum > (worth[c] as number) + 1e-12) {
        worth[c] = sum;
        took[c] = 1;
      }
    }
  }

  private addOnce(worth: Float64Array, took: Uint8Array, size: number, value: number): void {
    for (let c = worth.length - 1; c >= size; c--) {
      const sum = (worth[c - size] as number) + value;
      if (sum > (worth[c] as number) + 1e-12) {
        worth[c] = sum;
        took[c] = 1;
      }
    }
  }

  /** The best layer of a length, if it is worth more than `above`. */
  best(length: number, above: number): LayerPattern | undefined {
    const at = Math.min(this.cells - 1, Math.floor(length / this.cell));
    const widths: number[] = [];
    const values: number[] = [];
    const from: number[] = [];
    let most = 0;
    this.groups.forEach(({ width }, k) => {
      const value = (this.worth[k] as Float64Array)[at] as number;
      if (width > this.width || value <= most) return;
      most = value;
      widths.push(width);
      values.push(value);
      from.push(k);
    });
    if (widths.length === 0) return undefined;
    const limits = widths.map((width, k) =>
      Math.min(Math.floor(this.width / width), this.timesWanted(from[k] ?? 0, at)),
    );
    const priced = pricePattern({ sizes: widths, worth: values, limits }, this.width, above, MOST_NODES);
    if (priced.types.length === 0) return undefined;
    const columns = priced.types.flatMap((type, k) => {
      const stack = this.stack(from[type] as number, at, length);
      return stack ? Array.from({ length: priced.counts[k] as number }, () => stack) : [];
    });
    return columns.length > 0 ? { length, columns } : undefined;
  }

  /** How many columns of the best stack the demand is enough for. */
  private timesWanted(group: number, at: number): number {
    const rows = this.typesIn(group, at).map((type) => this.typeAt(type).row);
    const times = rows.map((row) =>
      Math.floor((this.wanted[row] ?? 0) / rows.filter((other) => other === row).length),
    );
    return Math.max(1, Math.min(...times));
  }

  private stack(group: number, at: number, length: number): { width: number; types: number[] } | undefined {
    const types = this.typesIn(group, at);
    const height = types.reduce((sum, type) => sum + this.typeAt(type).h, 0);
    const width = types.reduce((most, type) => Math.max(most, this.typeAt(type).w), 0);
    return types.length > 0 && height <= length ? { width, types } : undefined;
  }

  /** Pieces of the best stack, back from the type that was looked at last: what came after changed nothing for it. */
  private typesIn(group: number, at: number): number[] {
    const types: number[] = [];
    let c = at;
    for (let k = group; k >= 0; k--) {
      for (const type of this.groups[k]?.types.toReversed() ?? []) {
        const took = this.took[type] as Uint8Array;
        while (took[c] === 1) {
          types.push(type);
          c -= this.sizeOf(type);
          if (this.isOnce(type)) break;
        }
      }
    }
    return types;
  }
}
