/**
 * Cloth as a net of nodes: threads that hardly stretch, bending along each line of nodes, loads on the nodes, and what it
 * may touch. Lengths mm, forces N; node n has its coordinates at 3n, 3n + 1, 3n + 2: across, down, out.
 */
export interface ClothNet {
  nodeCount: number;
  threads: Threads;
  bends: Bends;
  /** Load on each node by coordinate, N. */
  loadN: Float64Array;
  /** 1 where a coordinate is held. */
  held: Uint8Array;
  contacts: Contacts;
}

/** Straight links between two nodes. */
export interface Threads {
  from: Int32Array;
  to: Int32Array;
  restMm: Float64Array;
  /** Force for each mm of stretch, N/mm. */
  stiffness: Float64Array;
  /** Share of the stiffness with which it withstands being shortened: 1 a thread, 0 a line that folds up. */
  pushShare: Float64Array;
  /** By how much it may be shorter than at rest before it withstands that, mm. */
  slackMm: Float64Array;
}

/**
 * Curvature at a node by up to three nodes: κ = Σ w·x + o, energy ½·k·|κ|². Along threads that do not stretch this is the
 * bending of the strip, second order in the spacing, and the same matrix whatever the shape.
 */
export interface Bends {
  /** Three nodes each; a node that stands twice counts twice. */
  nodes: Int32Array;
  /** Their weights, 1/mm². */
  weights: Float64Array;
  /** Constant part of the curvature by coordinate, 1/mm. */
  offset: Float64Array;
  /** Stiffness by coordinate, N·mm³: rigidity times area; 0 where mirrored cloth cancels that coordinate. */
  stiffness: Float64Array;
}

/**
 * Node a stays in front of a point between nodes b and c: out_a − (1 − s)·out_b − s·out_c ≥ gap; of the pane, out_a ≥ gap,
 * where b is `PANE`; to the right of a wall, across_a ≥ gap, where b is `SIDE_WALL`.
 */
export interface Contacts {
  nodes: Int32Array;
  share: Float64Array;
  gapMm: Float64Array;
  /** N/mm once touching, and how far before that it begins to push, mm. */
  stiffness: number;
  softMm: number;
}

export const PANE = -1;
export const SIDE_WALL = -2;

/** The coordinate that a contact is counted by: 0 across, 2 out. */
export function contactCoordinate(b: number): 0 | 2 {
  return b === SIDE_WALL ? 0 : 2;
}

export function noContacts(): Contacts {
  return {
    nodes: new Int32Array(0),
    share: new Float64Array(0),
    gapMm: new Float64Array(0),
    stiffness: 0,
    softMm: 1,
  };
}
