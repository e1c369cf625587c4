import { drawScene, drawSceneFrame, type PictureScene, place } from "../../drawing/index.ts";
import type { Bounds, OnScreen } from "../sheets/sheet-placing.ts";

/** A still picture laid out within bounds: wall and window stay where they are at every height. */
export function placeScene(scene: PictureScene, bounds: Bounds, coarse: boolean): OnScreen {
  const frame = place(drawSceneFrame(scene), bounds);
  const placed = place(drawScene(scene, { coarse }), { scale: frame.scale });
  return {
    placed,
    box: {
      xMm: placed.originMm[0] - frame.originMm[0],
      yMm: placed.originMm[1] - frame.originMm[1],
      widthMm: frame.widthMm,
      heightMm: frame.heightMm,
    },
  };
}
