import type { ClothNet, Contacts } from "./net.ts";

/** Puts a net together thread by thread. */
export class NetBuilder {
  readonly #nodeCount: number;
  readonly #threads = {
    from: [] as number[],
    to: [] as number[],
    rest: [] as number[],
    stiff: [] as number[],
  };
  readonly #push: number[] = [];
  readonly #slack: number[] = [];
  readonly #bends = {
    nodes: [] as number[],
    weights: [] as number[],
    offset: [] as number[],
    stiff: [] as number[],
  };
  readonly #load: Float64Array;
  readonly #held: Uint8Array;

  constructor(nodeCount: number) {
    this.#nodeCount = nodeCount;
    this.#load = new Float64Array(3 * nodeCount);
    this.#held = new Uint8Array(3 * nodeCount);
  }

  /**
   * A link with a force for each mm of stretch, N/mm, and the share of it that it withstands when shortened by more than
   * its slack.
   */
  thread(from: number, to: number, restMm: number, stiffness: number, pushShare: number, slackMm = 0): void {
    this.#threads.from.push(from);
    this.#threads.to.push(to);
    this.#threads.rest.push(restMm);
    this.#threads.stiff.push(stiffness);
    this.#push.push(pushShare);
    this.#slack.push(slackMm);
  }

  /** Bending at the middle one of three nodes, `steps` of cloth apart; `stiffness` is rigidity times area, N·mm³. */
  bend(nodes: readonly [number, number, number], steps: readonly [number, number], stiffness: number): void {
    const [a, b] = steps;
    const mean = (a + b) / 2;
    this.#add(
      nodes,
      [1 / (a * mean), -(1 / a + 1 / b) / mean, 1 / (b * mean)],
      [0, 0, 0],
      [1, 1, 1],
      stiffness,
    );
  }

  /** Bending at a node in a mirror plane across: its other neighbour is the mirror image of `beside`. */
  mirrorBend(beside: number, at: number, stepMm: number, stiffness: number): void {
    const weight = 2 / stepMm ** 2;
    this.#add([beside, at, at], [weight, -weight, 0], [0, 0, 0], [0, 1, 1], stiffness);
  }

  /**
   * Bending at a clamped end: half a cell of it, since the slope is given at the end itself and known again half a step on.
   * `direction` is the unit vector in which the clamp sends the cloth; `stiffness` is rigidity times half a cell’s area.
   */
  clampBend(
    at: number,
    beside: number,
    stepMm: number,
    direction: readonly [number, number, number],
    stiffness: number,
  ): void {
    const weight = 2 / stepMm ** 2;
    const offset = direction.map((part) => (-2 * part) / stepMm);
    this.#add([at, beside, beside], [-weight, weight, 0], offset, [1, 1, 1], stiffness);
  }

  #add(
    nodes: readonly number[],
    weights: readonly number[],
    offset: readonly number[],
    mask: readonly number[],
    stiffness: number,
  ): void {
    this.#bends.nodes.push(...nodes);
    this.#bends.weights.push(...weights);
    this.#bends.offset.push(...offset);
    this.#bends.stiff.push(...mask.map((part) => part * stiffness));
  }

  /** Adds to the load on one coordinate of a node, N. */
  load(node: number, coordinate: 0 | 1 | 2, newton: number): void {
    const at = 3 * node + coordinate;
    this.#load[at] = (this.#load[at] as number) + newton;
  }

  hold(node: number, coordinates: readonly (0 | 1 | 2)[]): void {
    for (const c of coordinates) this.#held[3 * node + c] = 1;
  }

  build(contacts: Contacts): ClothNet {
    return {
      nodeCount: this.#nodeCount,
      threads: {
        from: Int32Array.from(this.#threads.from),
        to: Int32Array.from(this.#threads.to),
        restMm: Float64Array.from(this.#threads.rest),
        stiffness: Float64Array.from(this.#threads.stiff),
        pushShare: Float64Array.from(this.#push),
        slackMm: Float64Array.from(this.#slack),
      },
      bends: {
        nodes: Int32Array.from(this.#bends.nodes),
        weights: Float64Array.from(this.#bends.weights),
        offset: Float64Array.from(this.#bends.offset),
        stiffness: Float64Array.from(this.#bends.stiff),
      },
      loadN: this.#load,
      held: this.#held,
      contacts,
    };
  }
}
