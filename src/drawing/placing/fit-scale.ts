import type { Drawing, Primitive } from "../model.ts";
import { annotate, type Words } from "./annotate.ts";
import type { Box } from "./box.ts";
import { extentOf, type ShiftedBox, wholeBox } from "./model-extent.ts";
import type { Scaling } from "./scaling.ts";

/** A drawing is never shrunk to less than this share of its bounds by its own words. */
const LEAST_SHARE = 0.08;
const MOST_TRIES = 9;
/** A drawing that leaves less than this share of the room free is large enough. */
const NEAR_SHARE = 0.01;
/** Share of the room that the bare drawing gets at the first try. */
const FIRST_SHARE = 0.75;

/** With less than this share of the paper in both directions the drawing has too little of it. */
const TIGHT_SHARE = 0.6;
/** Words that yield are given up for a drawing that grows by at least this factor. */
const WORTH_IT = 1.15;

/** All words, or on a small paper only those that do not yield, where the drawing gains much by it. */
export function roomiest(
  drawing: Drawing,
  model: readonly ShiftedBox[],
  fit: { maxWidthMm: number; maxHeightMm: number },
  textScale: number,
  marginMm: number,
): Layout {
  const full = fitted(drawing.primitives, model, fit, textScale, marginMm);
  const real = extentOf(model, { scale: full.scale, textScale: 0 });
  const isTight =
    real.right - real.left < TIGHT_SHARE * fit.maxWidthMm &&
    real.bottom - real.top < TIGHT_SHARE * fit.maxHeightMm;
  if (!isTight) return full;
  const firm = drawing.primitives.filter((primitive) => primitive.yields !== true);
  if (firm.length === drawing.primitives.length) return full;
  const sparse = fitted(firm, model, fit, textScale, marginMm);
  return sparse.scale > WORTH_IT * full.scale ? sparse : full;
}

interface Layout {
  scale: number;
  words: Words;
  box: Box;
}

export function layOutDrawing(
  primitives: readonly Primitive[],
  model: readonly ShiftedBox[],
  scaling: Scaling,
): Layout {
  const words = annotate(primitives, scaling);
  return { scale: scaling.scale, words, box: wholeBox(model, scaling, words) };
}

/**
 * The largest scale at which drawing and words fit, to within a hundredth of the room. How far a drawing overshoots
 * grows almost in proportion to its scale (words hardly change), so a few steps are enough; each narrows
 * the stretch between a scale that fits and one that does not.
 */
function fitted(
  primitives: readonly Primitive[],
  model: readonly ShiftedBox[],
  fit: { maxWidthMm: number; maxHeightMm: number },
  textScale: number,
  marginMm: number,
): Layout {
  const real = extentOf(model, { scale: 1, textScale: 0 });
  const width = {
    real: Math.max(real.right - real.left, 1e-6),
    most: Math.max(1, fit.maxWidthMm - 2 * marginMm),
  };
  const height = {
    real: Math.max(real.bottom - real.top, 1e-6),
    most: Math.max(1, fit.maxHeightMm - 2 * marginMm),
  };
  const nearMm = NEAR_SHARE * Math.min(width.most, height.most);
  const bare = Math.min(width.most / width.real, height.most / height.real);
  let fits = bare * LEAST_SHARE;
  let tooLarge = bare;
  let best: Layout | undefined;
  let scale = bare * FIRST_SHARE;
  for (let attempt = 0; attempt < MOST_TRIES; attempt += 1) {
    const layout = layOutDrawing(primitives, model, { scale, textScale });
    const { box } = layout;
    const overs = [box.right - box.left - width.most, box.bottom - box.top - height.most] as const;
    const over = Math.max(...overs);
    if (over <= 0) {
      best = layout;
      fits = scale;
      if (over > -nearMm) break;
    } else tooLarge = scale;
    // Both sides grow by their real size for each unit of scale; the tighter one decides.
    const wished = Math.min(
      scale - (overs[0] + nearMm / 2) / width.real,
      scale - (overs[1] + nearMm / 2) / height.real,
    );
    scale = Math.min(fits + 0.97 * (tooLarge - fits), Math.max(fits + 0.03 * (tooLarge - fits), wished));
  }
  if (best !== undefined) return best;
  return underItsWords(bare, { width: width.most, height: height.most }, (tried) =>
    layOutDrawing(primitives, model, { scale: tried, textScale }),
  );
}

/** Words that are larger than the paper are shrunk with all of it; the things under them cost at most this share more. */
const KEPT_ZOOM = 0.9;
const SCALES_TRIED = 8;

/** Where words alone overshoot the paper: the things as large as they grow while the words are shrunk hardly more for it. */
function underItsWords(
  bare: number,
  most: { width: number; height: number },
  layOut: (scale: number) => Layout,
): Layout {
  const zoomOf = ({ box }: Layout) =>
    Math.min(most.width / (box.right - box.left), most.height / (box.bottom - box.top));
  const least = layOut(bare * LEAST_SHARE);
  for (let step = SCALES_TRIED; step > 1; step--) {
    const larger = layOut((bare * step) / SCALES_TRIED);
    if (zoomOf(larger) >= KEPT_ZOOM * zoomOf(least)) return larger;
  }
  return least;
}
