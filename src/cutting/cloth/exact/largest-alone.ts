import type { GridBolt, StepGrid } from "../grid.ts";
import { Layers } from "./layers.ts";

/** Of so few pieces every part can be looked at. */
const MOST_LARGEST = 9;
/** Pieces laid for all of it: what is not found by then is not told. */
const MOST_NODES = 200_000;

/**
 * The length that the largest pieces still to be cut take by themselves on plain cloth, whatever lies beside them: what
 * is cut of all pieces is no shorter. Found for each set of them from the sets that a layer leaves (dynamic programming).
 */
export class LargestAlone {
  readonly #largest: number;
  readonly #layers: Layers;
  readonly #bolt: GridBolt;
  readonly #known = new Map<number, number>([[0, 0]]);
  #nodes = 0;

  /** @param bolt endless, without flaws */
  constructor(grid: StepGrid, stages: number, bolt: GridBolt) {
    const { items } = grid;
    const numbers = items.map((_, item) => item);
    const area = (item: number) => (items[item]?.w ?? 0) * (items[item]?.h ?? 0);
    this.#largest = numbers
      .toSorted((a, b) => area(b) - area(a))
      .slice(0, MOST_LARGEST)
      .reduce((bits, item) => bits | (1 << item), 0);
    this.#layers = new Layers(grid, stages, MOST_NODES);
    this.#bolt = bolt;
  }

  /** In steps, with the gap behind each layer; 0 where it cannot be said. */
  lengthOf(left: number): number {
    const rest = left & this.#largest;
    const known = this.#known.get(rest);
    if (known !== undefined) return known;
    if (this.#nodes > MOST_NODES) return 0;
    const ends = new Map<number, number>();
    const isWhole = this.#layers.each({
      rest,
      y: 0,
      bolt: this.#bolt,
      first: true,
      useful: () => true,
      emit: (taken, end) => ends.set(taken, Math.min(end, ends.get(taken) ?? Number.POSITIVE_INFINITY)),
    });
    this.#nodes += this.#layers.nodes;
    let least = isWhole ? Number.POSITIVE_INFINITY : 0;
    for (const [taken, end] of ends) least = Math.min(least, end + this.lengthOf(rest & ~taken));
    this.#known.set(rest, least);
    return least;
  }
}
