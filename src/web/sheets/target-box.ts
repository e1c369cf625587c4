import type { PlacedText } from "../../drawing/index.ts";

/** Nothing to press is smaller than this, px: WCAG 2.2, 2.5.8 Target Size (Minimum). */
const LEAST_PX = 24;
const PADDING_MM = 0.6;

/** The place to press for a figure on a drawing: its text, never smaller than a fingertip can hit. */
export function targetBox(text: PlacedText, pxPerMm: number) {
  const [atX, atY] = text.at;
  const least = LEAST_PX / pxPerMm;
  const width = Math.max(text.widthMm + 2 * PADDING_MM, least);
  const height = Math.max(text.sizeMm + 2 * PADDING_MM, least);
  const start = { start: 0, middle: text.widthMm / 2, end: text.widthMm }[text.anchor];
  const centreX = atX - start + text.widthMm / 2;
  // The middle of figures lies about a third of the em above the baseline.
  const centreY = atY - text.sizeMm * 0.33;
  return {
    x: centreX - width / 2,
    y: centreY - height / 2,
    width,
    height,
    transform: text.angleDeg === 0 ? undefined : `rotate(${text.angleDeg} ${atX} ${atY})`,
  };
}
