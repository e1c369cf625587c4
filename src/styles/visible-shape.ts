import type { FoldCloth } from "../mechanics/index.ts";
import type { Form, Grid, ShadePoint, Size } from "../shade-plan/index.ts";
import type { RaisedShape } from "./folding/raised-shape.ts";

/** What a shape follows from. */
export interface ShapeInput {
  size: Size;
  grid: Grid;
  form: Form;
  /** Depth that each gathered fold adds to the stack, mm, where it is known. */
  foldDepthMm?: number;
  /** What its folds feel, where they hang in one plane: then they are drawn as they bend. */
  hang?: FoldCloth;
}

/** A line of the shade as the eye sees it. `crease` is a pleat or tuck line, `gather` a short ruffle. */
export interface VisibleLine {
  kind: "edge" | "fold" | "crease" | "gather" | "rib" | "tape" | "stitch";
  points: readonly ShadePoint[];
  /** Row it belongs to, where it does. */
  row?: number;
  /** From where alone it is seen, where the cloth hides it from the other side. */
  seenFrom?: "front" | "back";
}

/** A stretch of cloth seen from the room: its closed outline, and the edges of it that show. */
export interface VisiblePiece {
  outline: readonly ShadePoint[];
  /** How far this cloth hangs below here with the shade lowered, mm: its pattern goes with it. */
  clothShiftMm?: number;
  edges: readonly VisibleLine[];
}

/** The shade seen from the room, and the section through a column. */
export interface VisibleShape {
  /** From behind to the front: each hides what lies behind it. */
  pieces: VisiblePiece[];
  /** Over all of them. */
  lines: VisibleLine[];
  /** The section through a column: rows where they are now, folds from the bottom up, the hem. */
  section: RaisedShape;
  /** Lowest point between the columns, where the cloth droops there below the hem of the section, mm below the top line. */
  lowestYMm?: number;
  /** The section midway between two columns, where it differs: (out from the cloth's plane, below the top line), from the top. */
  swagSection?: readonly ShadePoint[];
}
