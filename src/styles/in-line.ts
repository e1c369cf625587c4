import type { ResolvedShade, StyleKind } from "../job/index.ts";
import type { LineAsk, RowLayout, Size } from "../shade-plan/index.ts";
import { flatInLine } from "./flat/in-line.ts";
import type { LiftPartsHeight } from "./style.ts";

/** How a style lets its rows be placed by the room. */
export interface StyleInLine {
  /** What the shade asks of a common line, or why it cannot follow one, as the end of “… since”. */
  ask(resolved: ResolvedShade, size: Size, liftParts: LiftPartsHeight): LineAsk | string;
  /** The same shade, made to have its rows there. */
  follow(resolved: ResolvedShade, layout: RowLayout): ResolvedShade;
}

/** Who follows a common line of folds; for the others, why not, as the end of “… since”. */
export const STYLES_IN_LINE: Record<StyleKind, StyleInLine | string> = {
  flat: flatInLine,
  ribbed: flatInLine,
  hobbled: "the folds of a hobbled shade are set by its tapes",
  tucked: "the rows of a tucked shade are set by its tucks",
  relaxed: "the folds of a relaxed shade sag between its cords",
  tailed: "the folds of a tailed shade hang down at its sides",
  "pleated-balloon": "the poufs of a balloon shade hang below its rows",
  "gathered-balloon": "the poufs of a balloon shade hang below its rows",
  austrian: "the scallops of an Austrian shade are set by its gathers",
  festoon: "the scallops of a festoon hang below its rows",
};
