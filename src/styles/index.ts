import type { StyleKind } from "../job/index.ts";
import { austrian } from "./kinds/austrian/austrian.ts";
import { festoon } from "./kinds/festoon/festoon.ts";
import { flat } from "./kinds/flat/flat.ts";
import { gatheredBalloon } from "./kinds/gathered-balloon/gathered-balloon.ts";
import { hobbled } from "./kinds/hobbled/hobbled.ts";
import { pleatedBalloon } from "./kinds/pleated-balloon/pleated-balloon.ts";
import { relaxed } from "./kinds/relaxed/relaxed.ts";
import { ribbed } from "./kinds/ribbed/ribbed.ts";
import { tailed } from "./kinds/tailed/tailed.ts";
import { tucked } from "./kinds/tucked/tucked.ts";
import type { Style } from "./style.ts";

export { HEADRAIL_READS, headrailNeeded, type LiftPartsHeight } from "./base/headrail.ts";
export { hemBelowRowMm } from "./draping/draped-shape.ts";
export { easeBetween, hasTails } from "./draping/ease.ts";
export type { FoldState, RaisedShape } from "./folding/raised-shape.ts";
export { LINE_READS, type LineAskInput, type StyleInLine } from "./in-line.ts";
export { type Slant, slantOf } from "./slant.ts";
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
