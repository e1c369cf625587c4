import type { DrapeInput, DrapeMethod } from "../../drape/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { LayerCut } from "../../shade-plan/index.ts";
import type { ClothColours } from "../picture/cloth-faces.ts";
import { clothPattern } from "../picture/cloth-pattern.ts";
import type { WindowBehind } from "../picture/window-faces.ts";
import { openingBox } from "./opening-box.ts";

/** The two sides that are seen, and what the pattern of the face is drawn from: all of it data. */
export interface SceneColours {
  face: string;
  back: string;
  patterned?: Pick<LayerCut, "colour" | "motif" | "swatch">;
}

/** The face, and the layer nearest to the glass. */
export function sceneColours({ cloth }: Pick<ShadePlan, "cloth">): SceneColours {
  const layer = cloth.layers.find((one) => one.layer === "face");
  const face = layer?.colour ?? PLAIN;
  const back = cloth.layers.at(-1)?.colour ?? face;
  if (layer === undefined) return { face, back };
  const { colour, motif, swatch } = layer;
  return {
    ...{ face, back },
    patterned: {
      colour,
      ...(motif === undefined ? {} : { motif }),
      ...(swatch === undefined ? {} : { swatch }),
    },
  };
}

export function clothColours({ face, back, patterned }: SceneColours): ClothColours {
  const pattern = patterned === undefined ? undefined : clothPattern(patterned);
  return { face, back, ...(pattern === undefined ? {} : { pattern }) };
}

const PLAIN = "#d9c7a3";

/** How much of the wall is shown round the shade, as a share of its width, and how far back a pane lies, mm. */
const AROUND_SHARE = 0.14;
const PANE_BACK_MM = 45;
/** A wall stands a little before the shade that hangs in its opening, mm. */
const RECESSED_MM = 8;

export function windowBehind(shade: ShadePlan): WindowBehind {
  const { size, board, mount } = shade;
  const around = AROUND_SHARE * size.finishedWidthMm;
  const opening = openingBox(shade);
  const wallZ = mount === "inside" ? RECESSED_MM : -board.depthMm;
  const lowest = Math.max(size.finishedLengthMm, opening === undefined ? 0 : opening.y + opening.height);
  return {
    wall: {
      left: Math.min(0, opening?.x ?? 0) - around,
      right: Math.max(size.finishedWidthMm, opening === undefined ? 0 : opening.x + opening.width) + around,
      top: -around,
      bottom: lowest + around,
    },
    wallZ,
    paneZ: -board.depthMm - PANE_BACK_MM,
    ...(opening === undefined ? {} : { opening }),
    board: {
      left: board.leftMm,
      right: board.leftMm + board.lengthMm,
      thickness: board.thicknessMm,
      depth: board.depthMm,
    },
  };
}

/** What the hanging cloth of a shade is worked out from, and nothing else: it can be sent to another thread. */
export function drapeInput(shade: ShadePlan): DrapeInput {
  const { style, size, grid, form, feel, mass, board, folds } = shade;
  return { ...{ style, size, grid, form, feel, mass, board }, ...(folds === undefined ? {} : { folds }) };
}

/** Of a shape that is only looked at for a moment. */
export const COARSE_WORDS = "Coarse as yet: the cloth is still coming to rest.";

/** How true the shape of the cloth is. */
export function methodWords(method: DrapeMethod): string {
  switch (method) {
    case "section":
      return "Folds hang as sewn.";
    case "laid":
      return "Swags are laid by the lengths of cloth and tape; their weight is left out.";
    case "settled":
      return "The cloth is at rest under its weight.";
    case "unsettled":
      return "Where the cloth comes to rest was not found to the end: the picture is near it.";
  }
}
