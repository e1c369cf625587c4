import type { Motif } from "../../shade-plan/index.ts";
import type { Placed } from "../placed.ts";
import { round, type SvgNode } from "./svg-node.ts";

/** A picture of cloth and where its pattern falls on the finished shade, mm of the real thing. */
export interface PhotoOfCloth {
  href: string;
  /** The repeat that is marked in the picture, as shares of it. */
  leftShare: number;
  topShare: number;
  widthShare: number;
  heightShare: number;
  motif: Omit<Motif, "acrossKnown">;
}

/** Name of the pattern for cloth that hangs so far from where it hung lowered. */
export function photoId(shiftMm: number): string {
  return `cloth-${Math.round(shiftMm * 100)}`;
}

/** One pattern for each shift of the drawn pieces: tiles of the marked repeat, at the scale of the drawing. */
export function photoPatterns(placed: Placed, photo: PhotoOfCloth): SvgNode {
  const shifts = new Set(
    placed.items.flatMap((item) =>
      item.kind === "path" && item.clothShiftMm !== undefined ? [item.clothShiftMm] : [],
    ),
  );
  return { tag: "defs", attrs: {}, children: [...shifts].map((shift) => pattern(placed, photo, shift)) };
}

function pattern({ scale, originMm }: Placed, photo: PhotoOfCloth, shiftMm: number): SvgNode {
  const { motif } = photo;
  const width = motif.repeatXMm * scale;
  const height = motif.repeatYMm * scale;
  const dropped = motif.match === "half-drop";
  return {
    tag: "pattern",
    attrs: {
      id: photoId(shiftMm),
      patternUnits: "userSpaceOnUse",
      x: round(originMm[0] + motif.originXMm * scale),
      y: round(originMm[1] + (motif.originYMm - shiftMm) * scale),
      width: round(dropped ? 2 * width : width),
      height: round(height),
    },
    children: [
      repeat(photo, 0, 0, width, height),
      // The second column hangs half a repeat lower: what leaves it below comes in above.
      ...(dropped
        ? [repeat(photo, width, height / 2, width, height), repeat(photo, width, -height / 2, width, height)]
        : []),
    ],
  };
}

/** The marked repeat alone, cut out of the picture by a window of its own. */
function repeat(photo: PhotoOfCloth, x: number, y: number, width: number, height: number): SvgNode {
  const imageWidth = width / photo.widthShare;
  const imageHeight = height / photo.heightShare;
  return {
    tag: "svg",
    attrs: {
      x: round(x),
      y: round(y),
      width: round(width),
      height: round(height),
      viewBox: `0 0 ${round(width)} ${round(height)}`,
      overflow: "hidden",
    },
    children: [
      {
        tag: "image",
        attrs: {
          href: photo.href,
          x: round(-photo.leftShare * imageWidth),
          y: round(-photo.topShare * imageHeight),
          width: round(imageWidth),
          height: round(imageHeight),
          preserveAspectRatio: "none",
        },
      },
    ],
  };
}
