import type { DrapeInput, DrapeMethod } from "../../drape/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { LayerCut } from "../../shade-plan/index.ts";
import type { ClothColours } from "../picture/cloth-faces.ts";
import { darkerDye } from "../picture/lit-colour.ts";
import { clothPattern, withAreas } from "../picture/print/cloth-print.ts";
import type { WindowBehind } from "../picture/window-faces.ts";
import { openingBox } from "./opening-box.ts";
import { markOn, type SewnMark, sewnMarks } from "./sewn-marks.ts";

/** The two sides that are seen, and what the pattern of the face is drawn from: all of it data. */
export interface SceneColours {
  face: string;
  back: string;
  patterned?: Pick<LayerCut, "colour" | "motif" | "swatch">;
  /** What was sewn onto the face. */
  sewn: readonly SewnMark[];
}

/** The face, and the layer nearest to the glass. */
export function sceneColours(shade: Pick<ShadePlan, "size" | "form" | "cloth">): SceneColours {
  const { layers } = shade.cloth;
  const layer = layers.find((one) => one.layer === "face");
  const face = layer?.colour ?? PLAIN;
  const back = layers.at(-1)?.colour ?? face;
  const sides = { face, back, sewn: sewnMarks(shade) };
  if (layer === undefined) return sides;
  const { colour, motif, swatch } = layer;
  return {
    ...sides,
    patterned: {
      colour,
      ...(motif === undefined ? {} : { motif }),
      ...(swatch === undefined ? {} : { swatch }),
    },
  };
}

/** The colours of a scene on the cloth that shows them, laid flat. */
export function clothColours(
  { face, back, patterned, sewn }: SceneColours,
  { widthMm, lengthMm }: { widthMm: number; lengthMm: number },
): ClothColours {
  const pattern = patterned === undefined ? undefined : clothPattern(patterned, widthMm * lengthMm);
  if (pattern === undefined && sewn.length === 0) return { face, back };
  const print = pattern ?? { ground: face, dark: face, isPatterned: false, areasNear: () => [] };
  const areas = sewn.flatMap((mark) => {
    const points = markOn(mark, lengthMm);
    if (typeof mark.colour === "string") return [{ points, colour: mark.colour }];
    // What is hardly darker than a plain cloth is lost in a pattern.
    if (print.isPatterned && mark.colour.darker > FAINT) return [];
    return [{ points, colour: darkerDye(print.dark, mark.colour.darker) }];
  });
  return { face, back, print: withAreas(print, areas) };
}

const FAINT = 0.8;
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
    case "settled":
      return "The cloth is at rest under its weight.";
    case "unsettled":
      return "Where the cloth comes to rest was not found to the end: the picture is near it.";
  }
}
