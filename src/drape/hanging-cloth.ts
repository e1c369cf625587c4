import type { SettledCell } from "./cell/settled-cell.ts";

/**
 * The cloth of a shade as it hangs, a net of lines across it from the top line to the hem. Places are x from the left
 * finished edge seen from the room, y down from the top line, z out into the room from the plane of the rings, mm.
 */
export interface HangingCloth {
  /** Nodes on each line, from the left, and lines. */
  across: number;
  along: number;
  /** x, y, z of each node, line by line. */
  placesMm: Float64Array;
  /** Where each node was on the shade let down flat: x from the left, y from the top line along the cloth, mm. */
  flatMm: Float64Array;
  /**
   * The cloth at each node: x across it, the middle of the cloth counted as the middle of the shade, y along it from the top
   * line, mm. A pattern lies where `Motif` puts it in these. Where cloth is folded away behind a line, that line stands twice.
   */
  clothMm: Float64Array;
  /** Of the cloth between each line and the next: its place from the front, where cloth lies over cloth. */
  strands: Int32Array;
}

/** How true the shape is. */
export type DrapeMethod =
  /** The section through a column, the same all across. */
  | "section"
  /** A net of cloth at rest under its weight. */
  | "settled"
  /** The same, not yet at rest where the solver stopped. */
  | "unsettled";

/** A shade at one height. */
export interface HangingShade {
  cloth: HangingCloth;
  method: DrapeMethod;
  /** How far the cloth would still sink on the mean, mm; 0 for a section. */
  sinkMm: number;
  /** Its cells where a net was brought to rest: what the next height can begin from. */
  cells: readonly SettledCell[];
  /** Rings, and their cords from the lowest ring to the board. */
  ringsMm: [x: number, y: number, z: number][];
  cordsMm: { from: [x: number, y: number, z: number]; to: [x: number, y: number, z: number] }[];
}
