import type { StyleKind } from "../job/index.ts";
import { austrian } from "./austrian/austrian.ts";
import { festoon } from "./festoon/festoon.ts";
import { flat } from "./flat/flat.ts";
import { gatheredBalloon } from "./gathered-balloon/gathered-balloon.ts";
import { hobbled } from "./hobbled/hobbled.ts";
import { pleatedBalloon } from "./pleated-balloon/pleated-balloon.ts";
import { relaxed } from "./relaxed/relaxed.ts";
import { ribbed } from "./ribbed/ribbed.ts";
import type { Style } from "./style.ts";
import { tailed } from "./tailed/tailed.ts";
import { tucked } from "./tucked/tucked.ts";

export { hemBelowRowMm } from "./draping/draped-shape.ts";
export { easeBetween, hasTails } from "./draping/ease.ts";
export { HEADRAIL_READS, headrailNeeded, type LiftPartsHeight } from "./flat/headrail.ts";
export type { FoldState, RaisedShape } from "./folding/raised-shape.ts";
export { LINE_READS, type LineAskInput, type StyleInLine } from "./in-line.ts";
export type { Ask, ColumnsInput, GridInput, LaidGrid, Style, StyleStepInput } from "./style.ts";
export type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "./visible-shape.ts";

/** Every style of the trade that can be planned; the compiler names each new one that is missing. */
export const STYLE_MODULES: Record<StyleKind, Style> = {
  flat,
  ribbed,
  hobbled,
  tucked,
  relaxed,
  tailed,
  "pleated-balloon": pleatedBalloon,
  "gathered-balloon": gatheredBalloon,
  austrian,
  festoon,
};
