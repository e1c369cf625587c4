import type { StyleKind } from "../../job/index.ts";
import { drapedShape } from "../draping/draped-shape.ts";
import { ribbedShape } from "../folding/ribbed-shape.ts";
import { gatheredHemShape } from "../gathering/gathered-hem-shape.ts";
import { austrianShape } from "../kinds/austrian/austrian-shape.ts";
import { hobbledShape } from "../kinds/hobbled/hobbled-shape.ts";
import { tuckedShape } from "../kinds/tucked/tucked-shape.ts";
import type { ShapeInput, VisibleShape } from "../visible-shape.ts";

/** A shade as it is seen anywhere between lowered (0) and raised (1). */
export type StyleShape = (input: ShapeInput, raise: number) => VisibleShape;

/** The shape of every style, apart from what plans it: what only draws or hangs a shade takes in nothing else. */
export const STYLE_SHAPES: Record<StyleKind, StyleShape> = {
  flat: ribbedShape,
  ribbed: ribbedShape,
  hobbled: hobbledShape,
  tucked: tuckedShape,
  relaxed: drapedShape,
  tailed: drapedShape,
  "pleated-balloon": drapedShape,
  "gathered-balloon": gatheredHemShape,
  austrian: austrianShape,
  festoon: gatheredHemShape,
};
