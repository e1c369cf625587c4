/** What stays below the lowest row, by the rule that lays the rows of a shade. */
export type LineBottom =
  /** Hem to first row = skirt + half a fold: all of it hangs below the headrail line when raised. */
  | { kind: "half-fold"; skirtMm: number }
  /** Hem to first row = hem bar section; raised, the rings' height and the longer of it and half a fold hang. */
  | { kind: "hem-bar"; hemBarMm: number; ringStackMm: number };

/** What one shade asks of a spacing and of levels that a whole room shares, mm. */
export interface LineAsk {
  lengthMm: number;
  /** Least flat cloth above the gathered folds. */
  leastHeadrailMm: number;
  /** The rule leaves no more headrail than that, to one mark. */
  headrailFixed: boolean;
  /** Skirt or hem bar section as wanted: it may grow unless the maker fixed it on this shade. */
  bottom: LineBottom;
  bottomFixed: boolean;
  smallestMm: number;
  largestMm: number;
  /** What of its length must gather at least. */
  leastGatheredMm: number;
  rows?: number;
  spacingMm?: number;
  /** Highest allowed raised stack, top line to hem. */
  stackMm?: number;
}

/** Where a shade has its rows so that they meet those of its neighbours, mm. */
export interface RowLayout {
  spacingMm: number;
  rows: number;
  /** Hem to first row. */
  bottomMm: number;
  headrailMm: number;
  /** Top line to hem, fully raised. */
  raisedMm: number;
  /** More flat cloth under the board than the shade needs. */
  headrailExtraMm: number;
  /** More below the lowest row than was wanted. */
  bottomExtraMm: number;
}

/** What a window follows: levels and spacing of the room, its spacing alone, or neither. */
export type Follows = "levels" | "spacing" | "own";

export interface AlignedWindow {
  shadeId: string;
  windowName: string;
  follows: Follows;
  layout?: RowLayout;
  /** Its raised hem is at the level that most of the room shares. */
  sharesRaisedHem: boolean;
  /** Why it does not follow the levels, or not even the spacing. */
  why?: string;
  /** What was kept and what gave, in sentences. */
  words: string;
}

/** Heights above the floor at which the pattern of one cloth begins anew on every window that is made of it. */
export interface MotifLine {
  clothId: string;
  clothName: string;
  repeatMm: number;
  /** One of these lines above the floor, mm; the others are whole repeats from it. */
  levelMm: number;
  /** For each shade, the lowest of these lines above its hem, mm. */
  windows: { shadeId: string; fromHemMm: number }[];
}

/** The folds of a room in line: what is shared, and what each window kept or gave. */
export interface RoomAlignment {
  /** Spacing of rows that is shared; absent where fewer than two windows follow it. */
  spacingMm?: number;
  /** Shared heights of rows above the floor, lowest first, mm. */
  levelsMm: number[];
  /** Height above the floor of the raised hem that most windows share, where two or more do. */
  raisedHemMm?: number;
  motifs: MotifLine[];
  windows: AlignedWindow[];
  /** What the room shares, in sentences. */
  words: string;
  /** Every spacing and every level was tried; false where a very large room was searched in steps. */
  proven: boolean;
}
