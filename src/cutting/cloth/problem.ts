/**
 * Cutting pieces from bolts and remnants of one cloth: the problem and its answer.
 *
 * All lengths are mm and are held to a grid of 0.1 mm. On a bolt x runs across from the left selvedge, y along from
 * the end that is cut first. Face, lining, interlining and blackout are each a problem of their own.
 */
export interface ClothProblem {
  id: string;
  /** Bolts and remnants that pieces may be laid on; at the most one of them is endless: what is bought. */
  bolts: readonly Bolt[];
  pieces: readonly Piece[];
  /** The repeat of the pattern; a plain cloth has none. */
  repeat?: ClothRepeat;
  /** Cloth left between two cuts, mm. */
  gapMm: number;
  /**
   * How the cloth is cut. `straight`: only cuts from edge to edge, the first across the bolt. A stage is all cuts in
   * one direction before the cloth is turned; without `stages` there may be any number. Trimming a piece to its own
   * size is not counted. `free`: any way the scissors go.
   */
  cutting: { kind: "straight"; stages?: number } | { kind: "free" };
  /**
   * The longest that is cut along at a time, as the table is; only where cuts are straight. A piece, with what the
   * repeat loses before it, may be longer.
   */
  tableMm?: number;
  /** How the table works; it changes the order of the cuts, never where pieces lie in the length used. */
  table?: CuttingTable;
  /** What is left over and at least so large goes back to stock; the sides may be swapped. */
  keep: { widthMm: number; lengthMm: number };
  /** Lot groups of which pieces are cut already, with the dye lot that those came from: the rest comes from it, too. */
  boundLots?: { readonly [lotGroup: string]: string };
  /** Pieces that somebody has laid: they stay where they are, and the rest is cut round them. */
  held?: readonly HeldPiece[];
  /** Any whole number. The same problem, seed and budget give the same plan. */
  seed: number;
}

/** The usual way: straight cuts in three stages (across the bolt, along the length cut off, across again). */
export const STRAIGHT: ClothProblem["cutting"] = { kind: "straight", stages: 3 };

export interface CuttingTable {
  /** Two equal lengths of plain cloth lie on each other and are cut at one go. */
  doubled?: boolean;
  /** The bolt's end lies at the right, and columns come off from the right selvedge on. */
  leftHanded?: boolean;
  /** How near to its line a cut is, mm. */
  toleranceMm?: number;
}

export interface Bolt {
  id: string;
  /** What it is called; its remnants are numbered after it. Without one it goes by its id. */
  name?: string;
  /** A piece of cloth left from earlier work. */
  remnant: boolean;
  /** Usable width, selvedges taken off, mm. */
  widthMm: number;
  /** Undefined: as long as needed. */
  lengthMm?: number;
  /** Places that no piece may touch. A band over the whole width has x 0 and the bolt's width. */
  flaws: readonly Rect[];
  /**
   * What a millimetre off this bolt costs, in any unit, the same for all bolts. Cheaper bolts are cut first; give a
   * remnant less than new cloth, so that it is used where it fits.
   */
  costPerMm: number;
  /** Bolts of one dye lot; a bolt without one is a lot of its own. */
  lot?: string;
  /** y of a row of the repeat, mm (default 0), and x of a column (default 0). */
  rowMm?: number;
  columnMm?: number;
}

export interface Rect {
  xMm: number;
  yMm: number;
  widthMm: number;
  lengthMm: number;
}

/**
 * Rows lie `alongMm` apart. With `acrossMm` the pattern also has columns, and in a half drop every second column
 * is moved by half a row; without it a half drop is between joined widths alone (`Piece.join`).
 */
export interface ClothRepeat {
  alongMm: number;
  acrossMm?: number;
  match: "straight" | "half-drop";
}

export interface Piece {
  id: string;
  /** The shade it belongs to and what it becomes there: for labels. */
  shade: string;
  part: string;
  widthMm: number;
  /** Along the bolt when the grain runs down the shade. */
  lengthMm: number;
  /** `free`: may be turned a quarter on plain cloth. */
  grain: "fixed" | "free";
  /** `one-way`: the top always points to the same end of the bolt. `either`: may lie upside down. */
  nap: "one-way" | "either";
  /**
   * Where its upper left corner lies in the repeat. `alongMm`: below a row; undefined: anywhere, but as the other
   * panels of its join. `acrossMm`: right of a column; undefined: anywhere.
   */
  start?: { alongMm?: number; acrossMm?: number };
  /** Panels that are sewn together and must match; `index` counts widths from the left. */
  join?: { group: string; index: number };
  /** Not seen on the shade: cut to twice the tolerance. */
  hidden?: boolean;
  /** Pieces of one group come from bolts of one dye lot. */
  lotGroup?: string;
}

/** A piece that stays where it was laid; x, y and turn are those of its placement. */
export interface HeldPiece {
  pieceId: string;
  boltId: string;
  xMm: number;
  yMm: number;
  turn: Turn;
}

/** Pieces that lie on one bolt. */
export interface LaidOnBolt {
  boltId: string;
  placements: readonly Placement[];
}

/** Quarter turns are clockwise; 0 is the top towards the end cut first. */
export type Turn = 0 | 90 | 180 | 270;

export interface Placement {
  pieceId: string;
  xMm: number;
  yMm: number;
  /** As it lies on the bolt: swapped when turned by a quarter. */
  widthMm: number;
  lengthMm: number;
  turn: Turn;
}

/**
 * One straight cut through one sheet, in cutting order. Sheet 0 is the bolt as it lies; a cut takes `sheet` and
 * leaves `first` (nearer the origin) and `second`. `atMm` is measured on the bolt, y of a cut across, x of one along.
 */
export interface Cut {
  number: number;
  direction: "across" | "along";
  stage: number;
  sheet: number;
  first: number;
  second: number;
  atMm: number;
  /** Trims a piece to its own size. */
  trim: boolean;
  /** Number of the cut just before it that is made at one go with it: their sheets lie on each other. */
  withCut?: number;
  /** For a cut through what still hangs on the bolt: length of bolt left after it, mm; undefined when endless. */
  boltLeftMm?: number;
}

/** A sheet that nothing cuts any further. */
export interface Leaf extends Rect {
  sheet: number;
  /** `rest` is what stays on the bolt; an endless bolt has no leaf for it. */
  holds:
    | { kind: "piece"; pieceId: string }
    | { kind: "remnant"; name: string }
    | { kind: "rest" }
    | { kind: "waste" };
}

export interface Remnant extends Rect {
  name: string;
  boltId: string;
}

export interface BoltPlan {
  boltId: string;
  /** From the end cut first to the last cut across, mm. */
  usedMm: number;
  placements: readonly Placement[];
  /** Empty where the cloth is cut freely and no sequence of straight cuts exists. */
  cuts: readonly Cut[];
  leaves: readonly Leaf[];
  /** Worth keeping, the rest of the bolt not among them. */
  remnants: readonly Remnant[];
}

/** No plan can cost less than `cost`. */
export interface Bound {
  cost: number;
  /**
   * `area`: of the pieces; `wide`: pieces that cannot lie side by side; `bars`: strips filled in the best way;
   * `every-way`: all ways to cut were looked at, or all that could cost less.
   */
  which: "area" | "wide" | "bars" | "every-way";
}

/**
 * - `optimal`: costs what the bound says.
 * - `feasible`: the search has spent its budget; a better plan may exist.
 * - `stopped`: stopped before the budget was spent, best so far.
 */
export type PlanStatus = "optimal" | "feasible" | "stopped";

export interface ClothCutPlan {
  status: PlanStatus;
  bolts: readonly BoltPlan[];
  /** Sum of used length times cost of the bolt. */
  cost: number;
  bound: Bound;
  /** (cost − bound) / bound; 0 when optimal. */
  gap: number;
  /** Plans tried so far. */
  evaluations: number;
  /** Pieces that could not stay where they were laid, each with the reason in the words of the check. */
  notHeld?: readonly { pieceId: string; reason: string }[];
  /** Lot groups for which their bound lot had no cloth enough: they come from another. */
  otherLots?: readonly BoundLot[];
}

/** A lot group, and the dye lot that its pieces should come from. */
export interface BoundLot {
  lotGroup: string;
  lot: string;
}

export type ClothAnswer =
  | ClothCutPlan
  /** Proven: no plan exists. `pieceIds` are those that cannot be cut. */
  | { status: "infeasible"; reason: string; pieceIds: readonly string[] }
  /** Not proven impossible, but no place was found for `pieceIds` in the bolts given. */
  | { status: "not-found"; reason: string; pieceIds: readonly string[]; bound: Bound; evaluations: number }
  /** A plan was made and failed the check: a fault of ours, never to be cut. */
  | { status: "withheld"; reasons: readonly string[] };
