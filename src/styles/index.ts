import type { StyleKind } from "../job/index.ts";
import { flat } from "./flat/flat.ts";
import type { Style } from "./style.ts";

export type { FoldState, RaisedShape } from "./folding/raised-shape.ts";
export { raisedShape } from "./folding/raised-shape.ts";
export type { Ask, Mechanism, Style, StyleStepInput } from "./style.ts";
export type { ShapeInput, VisibleLine, VisiblePiece, VisibleShape } from "./visible-shape.ts";

/** Every style of the trade that can be planned; the compiler names each new one that is missing. */
export const STYLE_MODULES: Record<StyleKind, Style> = {
  flat,
  ribbed: flat,
  hobbled: flat,
  tucked: flat,
  relaxed: flat,
  tailed: flat,
  "pleated-balloon": flat,
  "gathered-balloon": flat,
  austrian: flat,
  festoon: flat,
};
