import { type ReadOf, type ResolvedMaking, reads } from "../job/index.ts";
import type { LineAsk, RowLayout, Size } from "../shade-plan/index.ts";

/** What a style asks of a common line by. */
export const LINE_READS = reads({ making: ["fold"], own: ["fold"] });

/** A shade that is measured and whose headrail allowance is known, for its style to say what its rows ask. */
export interface LineAskInput {
  shade: ReadOf<typeof LINE_READS>;
  size: Size;
  /** Least flat cloth above the gathered folds, mm: `headrailNeeded`. */
  headrailNeededMm: number;
}

/** How a style lets its rows be placed by the room. */
export interface StyleInLine {
  /** What the shade asks of a common line, or why it cannot follow one, as the end of “… since”. */
  ask(input: LineAskInput): LineAsk | string;
  /** Its settings of the folds, so that it has its rows there. */
  follow(fold: ResolvedMaking["fold"], layout: RowLayout): ResolvedMaking["fold"];
}
