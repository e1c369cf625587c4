import { darkerDye, markOn, sewnMarks } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { flatSize } from "../../shade-plan/index.ts";
import type { PatternTile } from "./pattern-tile.ts";

const LONGEST_PX = 2048;
/** Past the edges of the cloth, so that no edge shows the other end, mm. */
const PAST_MM = 30;

/**
 * The whole face as one tile: its pattern, and over it joins, bands, frill and hem. The pattern’s own tile where nothing is
 * sewn onto it.
 *
 * @param lengthMm of the cloth along the shade, as it hangs
 */
export function sewnCloth(
  tile: PatternTile | undefined,
  plan: Pick<ShadePlan, "size" | "form" | "cloth">,
  lengthMm: number,
): PatternTile | undefined {
  const marks = sewnMarks(plan);
  const face = plan.cloth.layers.find(({ layer }) => layer === "face");
  if (marks.length === 0 || face === undefined) return tile;
  const { finishedWidthMm } = plan.size;
  const wideMm = flatSize(plan.size, plan.form, "face").widthMm;
  const originMm = [(finishedWidthMm - wideMm) / 2 - PAST_MM, -PAST_MM] as const;
  const tileMm = [wideMm + 2 * PAST_MM, lengthMm + 2 * PAST_MM] as const;
  const pxPerMm = LONGEST_PX / Math.max(...tileMm);
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(tileMm[0] * pxPerMm);
  canvas.height = Math.round(tileMm[1] * pxPerMm);
  const draw = canvas.getContext("2d");
  if (!draw) return tile;
  draw.fillStyle = face.colour;
  draw.fillRect(0, 0, canvas.width, canvas.height);
  // From here on the pen counts millimetres of cloth.
  draw.setTransform(pxPerMm, 0, 0, pxPerMm, -originMm[0] * pxPerMm, -originMm[1] * pxPerMm);
  const repeated = tile && draw.createPattern(tile.canvas, "repeat");
  if (tile && repeated) {
    const [scaleX, scaleY] = [tile.tileMm[0] / tile.canvas.width, tile.tileMm[1] / tile.canvas.height];
    repeated.setTransform(new DOMMatrix([scaleX, 0, 0, scaleY, ...tile.originMm]));
    draw.fillStyle = repeated;
    draw.fillRect(...originMm, ...tileMm);
  }
  for (const mark of marks) {
    draw.fillStyle =
      typeof mark.colour === "string" ? mark.colour : darkerDye(face.colour, mark.colour.darker);
    draw.beginPath();
    for (const [x, y] of markOn(mark, lengthMm)) draw.lineTo(x, y);
    draw.fill();
  }
  return { canvas, originMm, tileMm };
}
