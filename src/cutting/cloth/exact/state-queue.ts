/** A state of the search: what is cut, on which bolt the next layer goes, and from where. */
export interface State {
  /** Bits of the pieces that are cut. */
  cut: number;
  /** Place in the order of the bolts. */
  at: number;
  /** Where the last layer of this bolt ends, and what the bolts before cost. */
  y: number;
  before: number;
  /** No plan that goes on from here costs less. */
  least: number;
  from?: State;
  /** What the last step laid; nothing where it went on to the next bolt. */
  laid: readonly Laid[];
}

/** A piece in its place, in steps. */
export interface Laid {
  item: number;
  x: number;
  y: number;
  w: number;
  h: number;
}

/** States, the most promising first: a binary heap. */
export class StateQueue {
  readonly #heap: State[] = [];

  push(state: State): void {
    const heap = this.#heap;
    let at = heap.push(state) - 1;
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!isBefore(state, heap[up] as State)) break;
      heap[at] = heap[up] as State;
      at = up;
    }
    heap[at] = state;
  }

  pop(): State | undefined {
    const heap = this.#heap;
    const [first] = heap;
    const last = heap.pop();
    if (first === undefined || last === undefined || heap.length === 0) return first;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= heap.length) break;
      if (down + 1 < heap.length && isBefore(heap[down + 1] as State, heap[down] as State)) down++;
      if (!isBefore(heap[down] as State, last)) break;
      heap[at] = heap[down] as State;
      at = down;
    }
    heap[at] = last;
    return first;
  }
}

/** Of equal promise the one that has come further: it ends sooner. */
function isBefore(a: State, b: State): boolean {
  return a.least < b.least || (a.least === b.least && a.before + a.y > b.before + b.y);
}
