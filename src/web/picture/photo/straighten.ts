import { SWATCH_SIDE } from "../../../job/index.ts";
import {
  type FourPoints,
  homographyOf,
  type PlanePoint,
  throughHomography,
} from "../../../mechanics/index.ts";
import type { CornerShares } from "./four-corners.tsx";

/** A corner is marked to about this, px: what a finger and an eye come to. */
const MARKED_PX = 1.5;

export interface Straightened {
  canvas: HTMLCanvasElement;
  /** How far its scale may be out, as a share. */
  errorShare: number;
  /** Of the whole straightened picture. */
  widthMm: number;
  heightMm: number;
}

export interface StraightenAsk {
  corners: CornerShares;
  /** What the corners are those of, mm. */
  widthMm: number;
  heightMm: number;
  /** How much is shown beyond them at each side, as a share of their own size. */
  beyondShare: number;
  longestPx: number;
}

/**
 * A photo taken at a slant as if from straight above: each pixel of the new picture is looked up where the homography of the
 * four corners has it. Undefined where the corners go round nothing.
 */
export function straightened(
  source: CanvasImageSource & { width: number; height: number },
  ask: StraightenAsk,
): Straightened | undefined {
  const { widthMm, heightMm, beyondShare } = ask;
  const marked = ask.corners.map(
    ([x, y]): PlanePoint => [x * source.width, y * source.height],
  ) as unknown as FourPoints;
  const whole = { width: widthMm * (1 + 2 * beyondShare), height: heightMm * (1 + 2 * beyondShare) };
  const scale = ask.longestPx / Math.max(whole.width, whole.height);
  const [left, top] = [beyondShare * widthMm * scale, beyondShare * heightMm * scale];
  const [right, bottom] = [left + widthMm * scale, top + heightMm * scale];
  const back = homographyOf(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    marked,
  );
  if (back === undefined) return undefined;
  const from = pixelsOf(source);
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(whole.width * scale);
  canvas.height = Math.round(whole.height * scale);
  const draw = canvas.getContext("2d");
  if (!from || !draw) return undefined;
  const to = draw.createImageData(canvas.width, canvas.height);
  for (let y = 0; y < canvas.height; y++) {
    for (let x = 0; x < canvas.width; x++) {
      const seen = throughHomography(back, [x + 0.5, y + 0.5]);
      if (seen) copyPixel(from, seen, to.data, 4 * (y * canvas.width + x));
    }
  }
  draw.putImageData(to, 0, 0);
  return {
    canvas,
    errorShare: scaleError(marked),
    widthMm: canvas.width / scale,
    heightMm: canvas.height / scale,
  };
}

/** Both ends of the shortest side are marked by hand: their errors add up in the mean of squares. */
export function scaleError(corners: FourPoints): number {
  const sides = corners.map(([x, y], k) => {
    const [u, v] = corners[(k + 1) % 4] as PlanePoint;
    return Math.hypot(u - x, v - y);
  });
  return Math.min(1, (Math.SQRT2 * MARKED_PX) / Math.max(1, Math.min(...sides)));
}

/** The picture in few colours, row by row, rrggbb each. */
export function swatchOf(source: CanvasImageSource): string | undefined {
  const canvas = document.createElement("canvas");
  canvas.width = SWATCH_SIDE;
  canvas.height = SWATCH_SIDE;
  const draw = canvas.getContext("2d");
  if (!draw) return undefined;
  draw.imageSmoothingQuality = "high";
  draw.drawImage(source, 0, 0, SWATCH_SIDE, SWATCH_SIDE);
  const { data } = draw.getImageData(0, 0, SWATCH_SIDE, SWATCH_SIDE);
  let colours = "";
  for (let at = 0; at < data.length; at += 4)
    for (let c = 0; c < 3; c++) colours += (data[at + c] ?? 0).toString(16).padStart(2, "0");
  return colours;
}

function pixelsOf(source: CanvasImageSource & { width: number; height: number }): ImageData | undefined {
  const canvas = document.createElement("canvas");
  canvas.width = source.width;
  canvas.height = source.height;
  const draw = canvas.getContext("2d");
  draw?.drawImage(source, 0, 0);
  return draw?.getImageData(0, 0, canvas.width, canvas.height);
}

/** A pixel between four others, by how near it lies to each; the nearest edge stands for what lies outside. */
function copyPixel(
  { data, width, height }: ImageData,
  [x, y]: PlanePoint,
  to: Uint8ClampedArray,
  at: number,
): void {
  const within = (value: number, size: number) => Math.min(size - 1, Math.max(0, value - 0.5));
  const [px, py] = [within(x, width), within(y, height)];
  const [i, j] = [Math.floor(px), Math.floor(py)];
  const [s, t] = [px - i, py - j];
  const [i2, j2] = [Math.min(width - 1, i + 1), Math.min(height - 1, j + 1)];
  for (let c = 0; c < 3; c++) {
    const of = (column: number, row: number) => data[4 * (row * width + column) + c] ?? 0;
    to[at + c] = (1 - t) * ((1 - s) * of(i, j) + s * of(i2, j)) + t * ((1 - s) * of(i, j2) + s * of(i2, j2));
  }
  to[at + 3] = 255;
}
