import { columnStart, type GridBolt, type GridItem, rowStart, type StepGrid } from "../grid.ts";
import type { Laid } from "./state-queue.ts";

/** Pieces laid for one state, at the most; then the search gives up. */
const MOST_NODES = 400_000;
/** Ways of the same pieces that are told apart. */
const MOST_WAYS = 40;

/** What a layer must keep to. */
export interface LayerTask {
  /** Bits of the pieces that are still there. */
  rest: number;
  y: number;
  bolt: GridBolt;
  /** The first piece that is still there must be in it: layers that may change places come in one order. */
  first: boolean;
  /** Whether a layer that has come so far may still be part of a better plan. */
  useful: (layer: OpenLayer) => boolean;
  emit: (taken: number, end: number, laid: Laid[]) => void;
}

/** A layer on the way: beside its last column, and below that, there may be more. */
export interface OpenLayer {
  taken: number;
  end: number;
  /** Where the last column ends for now, and the width from its left, and from its right, on. */
  below: number;
  fromLeft: number;
  fromRight: number;
}

/** How far pieces reach, what opened the last column and what lies last in it. */
interface Way {
  left: number;
  right: number;
  below: number;
  end: number;
  first: number;
  last: number;
}

/**
 * All layers that can be cut across a bolt from some place on: columns side by side, each a stack of pieces, every
 * piece as early as the repeat and the flaws allow. Columns and stacks that can change places without a difference come
 * in one order; of equal pieces the first is taken.
 */
export class Layers {
  readonly #grid: StepGrid;
  readonly #stacks: boolean;
  readonly #longest: number;
  readonly #mostNodes: number;
  /** Order in a stack, or of columns, makes a difference. */
  readonly #stackOrder: boolean;
  readonly #columnOrder: boolean;
  readonly #equalBefore: readonly number[];
  /** By the pieces laid: how they have come to lie. */
  readonly #ways = new Map<number, Way[]>();
  #laid: Laid[] = [];
  #nodes = 0;

  /** @param mostNodes pieces laid for one state, at the most */
  constructor(grid: StepGrid, stages: number, mostNodes = MOST_NODES) {
    this.#mostNodes = mostNodes;
    const { items, lattice } = grid;
    this.#grid = grid;
    this.#stacks = stages > 2;
    const tallest = items.reduce((most, { w, h, turns }) => Math.max(most, h, turns ? w : 0), 0);
    this.#longest = Math.max(grid.longestLayer, tallest + (lattice?.along ?? 0));
    this.#stackOrder = lattice !== undefined || grid.bolts.some(({ flaws }) => flaws.length > 0);
    this.#columnOrder = lattice !== undefined && items.some(({ phaseX }) => phaseX >= 0);
    this.#equalBefore = items.map((item, i) =>
      items.findLastIndex(
        (other, k) =>
          k < i &&
          other.w === item.w &&
          other.h === item.h &&
          other.turns === item.turns &&
          other.phaseX === item.phaseX &&
          other.phaseY === item.phaseY &&
          other.lotGroup === item.lotGroup,
      ),
    );
  }

  /** Pieces laid for the last state. */
  get nodes(): number {
    return this.#nodes;
  }

  /** False where there are too many to look at. */
  each(task: LayerTask): boolean {
    this.#laid = [];
    this.#nodes = 0;
    this.#ways.clear();
    this.#column(task, 0, 0, task.y, -1);
    return this.#nodes <= this.#mostNodes;
  }

  /** Begins a column at x, or ends the layer. */
  #column(task: LayerTask, x: number, taken: number, end: number, lastFirst: number): void {
    if (taken !== 0) task.emit(taken, end, this.#laid.slice());
    const { items } = this.#grid;
    for (let item = this.#columnOrder ? 0 : lastFirst + 1; item < items.length; item++) {
      if (this.#nodes > this.#mostNodes) return;
      if (!this.#isNext(task, item, taken)) continue;
      this.#pile(task, { x, right: x, y: task.y, first: item }, item, taken, end);
      // The first that is there opens the first column.
      if (task.first && taken === 0) return;
    }
  }

  #isNext({ rest }: LayerTask, item: number, taken: number): boolean {
    const left = rest & ~taken;
    if ((left & (1 << item)) === 0) return false;
    const before = this.#equalBefore[item] as number;
    return before < 0 || (left & (1 << before)) === 0;
  }

  /** Lays a piece at the end of a column in every way that it may lie, and goes on. */
  #pile(
    task: LayerTask,
    column: { x: number; right: number; y: number; first: number },
    item: number,
    taken: number,
    end: number,
  ): void {
    const { w, h, turns } = this.#grid.items[item] as StepGrid["items"][number];
    this.#put(task, column, { item, w, h }, taken, end);
    if (turns) this.#put(task, column, { item, w: h, h: w }, taken, end);
  }

  #put(
    task: LayerTask,
    column: { x: number; right: number; y: number; first: number },
    piece: { item: number; w: number; h: number },
    taken: number,
    end: number,
  ): void {
    const { bolt } = task;
    const { items } = this.#grid;
    for (const x of this.#startsX(bolt, piece.item, column.x)) {
      const right = Math.max(column.right, x + piece.w);
      if (right > bolt.w) return;
      const y = this.#startY(bolt, piece, x, column.y);
      const below = y + piece.h;
      const isFirst = column.y === task.y;
      if (below > bolt.h || (!isFirst && below - task.y > this.#longest)) continue;
      const now = taken | (1 << piece.item);
      const reached = Math.max(end, below);
      this.#nodes++;
      const open = {
        taken: now,
        end: reached,
        below: this.#stacks ? below : reached,
        fromLeft: bolt.w - column.x,
        fromRight: bolt.w - right,
      };
      if (!task.useful(open)) continue;
      if (
        this.#isWorse(now, {
          left: column.x,
          right,
          below,
          end: reached,
          first: column.first,
          last: piece.item,
        })
      )
        continue;
      this.#laid.push({ item: piece.item, x, y, w: piece.w, h: piece.h });
      this.#column(task, right, now, reached, column.first);
      if (this.#stacks) {
        const next = { ...column, right, y: below };
        for (let item = this.#stackOrder ? 0 : piece.item + 1; item < items.length; item++) {
          if (this.#nodes > this.#mostNodes) break;
          if (this.#isNext(task, item, now)) this.#pile(task, next, item, now, reached);
        }
      }
      this.#laid.pop();
    }
  }

  /** Whether the same pieces were laid before with no less room for others; if not, keeps the way. */
  #isWorse(taken: number, way: Way): boolean {
    const ways = this.#ways.get(taken);
    if (!ways) {
      this.#ways.set(taken, [way]);
      return false;
    }
    for (const one of ways) {
      if (
        one.left <= way.left &&
        one.right <= way.right &&
        one.below <= way.below &&
        one.end <= way.end &&
        (this.#columnOrder || one.first <= way.first) &&
        (this.#stackOrder || one.last <= way.last)
      )
        return true;
    }
    if (ways.length < MOST_WAYS) ways.push(way);
    return false;
  }

  /** Where a piece may lie in a column: in a half drop the next column of the pattern begins at another height. */
  #startsX(bolt: GridBolt, item: number, x: number): number[] {
    const { lattice, items } = this.#grid;
    const near = columnStart(this.#grid, bolt, item, x);
    return lattice?.half && (items[item] as GridItem).phaseX >= 0 ? [near, near + lattice.across] : [near];
  }

  #startY(bolt: GridBolt, piece: { item: number; w: number; h: number }, x: number, from: number): number {
    let y = rowStart(this.#grid, bolt, piece.item, { x, y: from });
    const { gap } = this.#grid;
    for (let again = true; again; ) {
      again = false;
      for (const { x1, x2, y1, y2 } of bolt.flaws) {
        const isWide = x1 < piece.w - gap && bolt.w - x2 < piece.w;
        if (!isWide || y >= y2 || y + piece.h - gap <= y1) continue;
        y = rowStart(this.#grid, bolt, piece.item, { x, y: y2 });
        again = true;
      }
    }
    return y;
  }
}
