import type { Cloth, Railroad } from "../job/index.ts";
import type { Layer } from "../shade-plan/index.ts";
import type { ClothInput } from "./cloth-input.ts";
import type { LayerShape } from "./layer-shape.ts";
import { offTheBoltMm } from "./off-the-bolt.ts";
import { turnedShape } from "./turned-shape.ts";
import { uprightShape } from "./upright-shape.ts";

/** What was weighed when a layer was cut upright or turned sideways. */
export interface TurnStory {
  asked: Railroad;
  /** Why plain good sense keeps it upright: a top, a pile, a pattern. */
  against?: "direction" | "nap" | "pattern";
  uprightMm: number;
  uprightPanels: number;
  /** Undefined where the cloth is too narrow to be turned, or nothing speaks for it. */
  turnedMm?: number;
}

/**
 * Turned sideways a layer comes in one piece where the cloth is as wide as it is long. Asked for, it is turned where it
 * fits; left to the planner, only where that saves a join, takes no more cloth, and the cloth has no top, pile or pattern.
 */
export function chooseTurn(
  input: ClothInput,
  layer: Layer,
  cloth: Cloth,
): { shape: LayerShape; story: TurnStory } {
  const { pattern, lining } = input.shade.making;
  const asked = layer === "face" ? pattern.railroad : lining.railroad;
  const upright = uprightShape(input, layer, cloth);
  // In one piece already, it is turned only for those who ask.
  // Nor do pieces that the style cuts apart take less for lying across the cloth.
  const isApart = upright.joins.at === "cut-apart";
  const turned =
    !isApart && (asked === "always" || upright.panels.length > 1)
      ? turnedShape(input, layer, cloth)
      : undefined;
  const uprightMm = offTheBoltMm(input.shade, cloth, upright).lengthMm;
  const turnedMm = turned && offTheBoltMm(input.shade, cloth, turned).lengthMm;
  const against = againstTurning(cloth);
  const story: TurnStory = {
    asked,
    ...(against === undefined ? {} : { against }),
    uprightMm,
    uprightPanels: upright.panels.length,
    ...(turnedMm === undefined ? {} : { turnedMm }),
  };
  const worth =
    against === undefined && upright.panels.length > 1 && (turnedMm ?? Infinity) <= uprightMm + 1e-6;
  const takes = turned !== undefined && (asked === "always" || (asked === "auto" && worth));
  return { shape: takes ? turned : upright, story };
}

function againstTurning(cloth: Cloth): TurnStory["against"] {
  if (cloth.nap === true) return "nap";
  if (cloth.direction === "one-way") return "direction";
  return cloth.repeat === undefined ? undefined : "pattern";
}
