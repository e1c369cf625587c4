import { LEAST_SHOWN_MM, lozenge } from "../../drawing/index.ts";
import type { ClothPhoto } from "../../job/index.ts";
import type { LayerCut } from "../../shade-plan/index.ts";

/** One tile of a pattern as pixels, and where it lies on the cloth, mm. */
export interface PatternTile {
  canvas: HTMLCanvasElement;
  originMm: readonly [x: number, y: number];
  tileMm: readonly [width: number, height: number];
}

const LONGEST_PX = 1024;
const LOZENGE_PX = 256;

/** The pattern of the face as a tile: from its photo, else its motif as a lozenge; undefined where it has none that is seen. */
export async function patternTile(
  { colour, motif }: Pick<LayerCut, "colour" | "motif">,
  photo: ClothPhoto | undefined,
): Promise<PatternTile | undefined> {
  if (motif === undefined) return undefined;
  const { repeatXMm, repeatYMm, originXMm, originAlongMm } = motif;
  if (photo === undefined && Math.min(repeatXMm, repeatYMm) < LEAST_SHOWN_MM) return undefined;
  const one = photo === undefined ? lozengeCanvas(colour) : await repeatCanvas(photo, repeatXMm / repeatYMm);
  const isDropped = motif.match === "half-drop";
  return {
    canvas: isDropped ? halfDropped(one) : one,
    originMm: [originXMm, originAlongMm],
    tileMm: [isDropped ? 2 * repeatXMm : repeatXMm, repeatYMm],
  };
}

/** The marked repeat alone, as wide against its height as it is on the cloth. */
async function repeatCanvas(photo: ClothPhoto, aspect: number): Promise<HTMLCanvasElement> {
  const image = new Image();
  image.src = photo.image;
  await image.decode();
  const { naturalWidth: width, naturalHeight: height } = image;
  const side = Math.min(LONGEST_PX, Math.max(width * photo.widthShare, height * photo.heightShare));
  const canvas = canvasOf(side * Math.min(1, aspect), side * Math.min(1, 1 / aspect));
  canvas
    .getContext("2d")
    ?.drawImage(
      image,
      ...[
        photo.leftShare * width,
        photo.topShare * height,
        photo.widthShare * width,
        photo.heightShare * height,
      ],
      ...[0, 0, canvas.width, canvas.height],
    );
  return canvas;
}

function lozengeCanvas(colour: string): HTMLCanvasElement {
  const canvas = canvasOf(LOZENGE_PX, LOZENGE_PX);
  const draw = canvas.getContext("2d");
  if (!draw) return canvas;
  const colourAt = lozenge(colour);
  for (let x = 0; x < LOZENGE_PX; x++) {
    for (let y = 0; y < LOZENGE_PX; y++) {
      draw.fillStyle = colourAt((x + 0.5) / LOZENGE_PX, (y + 0.5) / LOZENGE_PX);
      draw.fillRect(x, y, 1, 1);
    }
  }
  return canvas;
}

/** Two columns, the second half a repeat lower: what leaves it below comes in above. */
function halfDropped(one: HTMLCanvasElement): HTMLCanvasElement {
  const { width, height } = one;
  const canvas = canvasOf(2 * width, height);
  const draw = canvas.getContext("2d");
  draw?.drawImage(one, 0, 0);
  draw?.drawImage(one, width, height / 2);
  draw?.drawImage(one, width, height / 2 - height);
  return canvas;
}

function canvasOf(width: number, height: number): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(width));
  canvas.height = Math.max(1, Math.round(height));
  return canvas;
}
