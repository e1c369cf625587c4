import type { LineAsk, RowLayout } from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";

/** A row more is taken where it saves at least this much cloth from hanging below the board, mm. */
export const ROW_WORTH_MM = inches(1 / 2);
/** A raised hem at its neighbours' level is worth this much more cloth hanging below the board, mm. */
export const SHARED_HEM_WORTH_MM = inches(2);
/** What one window gives for the line counts twice once it is this much, mm: no window should bear it all. */
export const COUNTS_TWICE_MM = inches(4);

/** One window that may follow the room. */
export interface LineWindow {
  id: string;
  /** Top line above the floor, mm, where it is known: without it no level can be met. */
  topMm?: number;
  ask: LineAsk;
  /** How it is made where it follows nothing. */
  own: { rows: number; raisedMm: number };
}

/** A room to line up, lengths in mm. */
export interface LineProblem {
  /** The ruler's mark, mm: every spacing and every level is a whole number of these. */
  markMm: number;
  windows: readonly LineWindow[];
  /** Whether rows meet at equal heights above the floor, or only at equal spacing. */
  folds: "levels" | "spacing";
  /** Whether raised hems at one level count. */
  stack: boolean;
  /** Fixed by the maker for the whole room. */
  spacingMm?: number;
  mostLowerMm: number;
}

/** What the room comes to by the objective: compared in this order, first difference decides. */
export interface LineScore {
  /** Windows on the shared levels: more is better. */
  levels: number;
  /** Windows with the shared spacing, those on the levels included: more is better. */
  followers: number;
  /** Cloth that hangs below the boards when all is raised, with what it counts besides, mm: less is better. */
  costMm: number;
  /** Hem sections longer than wanted, all together, mm: less is better. */
  bottomExtraMm: number;
}

/** Where one window has its rows in the line. */
export interface AlignedRows {
  follows: "levels" | "spacing";
  layout: RowLayout;
  sharesRaisedHem: boolean;
}

/** The best line that was found, by `compareScores`. */
export interface SolvedLine {
  kind: "aligned";
  spacingMm: number;
  /** One of the levels above the floor, mm: the others are whole spacings from it. */
  levelMm: number;
  raisedHemMm?: number;
  /** By window; one that is missing keeps its own rows. */
  layouts: ReadonlyMap<string, AlignedRows>;
  score: LineScore;
  proven: boolean;
}

/** With nothing shared, fewer than two windows can follow one spacing. */
export type LineSolution = SolvedLine | { kind: "nothing-shared" };
