import { findRoot } from "../mechanics/index.ts";
import { SAME_LENGTH_MM } from "../units/index.ts";
import type { ShadePoint } from "./form.ts";
import type { Size } from "./size.ts";

/** A head as every stage asks for it: level, on a slope, or an arc. */
export type HeadShape = Pick<Size, "finishedWidthMm" | "head">;

/** Where the head of the shade runs at a place across it, mm below the top line: 0 where it is level. */
export function headYMm({ finishedWidthMm: width, head }: HeadShape, xMm: number): number {
  if (head === undefined || width <= 0 || head.fallMm <= 0) return 0;
  const x = Math.min(Math.max(xMm, 0), width);
  if (head.kind === "angled") return (head.fallMm * (head.high === "left" ? x : width - x)) / width;
  const fromMiddle = x - width / 2;
  // More than half a circle would overhang its ends.
  if (head.fallMm > width / 2)
    return head.fallMm * (1 - Math.sqrt(Math.max(0, 1 - ((2 * fromMiddle) / width) ** 2)));
  const radius = arcRadiusMm(width, head.fallMm);
  // The same as R − √(R² − d²), without the difference of two large numbers where the arc is all but flat.
  return fromMiddle ** 2 / (radius + Math.sqrt(Math.max(0, radius ** 2 - fromMiddle ** 2)));
}

/**
 * From one place across the shade to another, along the board that follows the head, mm: below 0 to the left.
 * A slope by Pythagoras, an arc of a circle R·Δφ, half an ellipse by Simpson's rule over its parameter.
 */
export function alongHeadMm(head: HeadShape, fromMm: number, toMm: number): number {
  return fromLeftMm(head, toMm) - fromLeftMm(head, fromMm);
}

/** The place across the shade that lies so far along the board from another, mm. */
export function acrossAtMm(head: HeadShape, fromMm: number, alongMm: number): number {
  const { finishedWidthMm: width } = head;
  if (isLevel(head)) return fromMm + alongMm;
  const wanted = fromLeftMm(head, fromMm) + alongMm;
  const lengthMm = fromLeftMm(head, width);
  if (wanted <= 0) return wanted;
  if (wanted >= lengthMm) return width + wanted - lengthMm;
  if (head.head?.kind === "angled") return (wanted * width) / lengthMm;
  const root = findRoot((x) => fromLeftMm(head, x) - wanted, 0, width);
  return root.kind === "converged" ? root.value : (wanted * width) / lengthMm;
}

/** From the left finished edge; beyond the edges a board would run on level. */
function fromLeftMm(head: HeadShape, xMm: number): number {
  const { finishedWidthMm: width } = head;
  if (isLevel(head) || xMm <= 0) return xMm;
  return onShadeMm(head, Math.min(xMm, width)) + Math.max(0, xMm - width);
}

function isLevel({ finishedWidthMm, head }: HeadShape): boolean {
  return head === undefined || finishedWidthMm <= 0 || head.fallMm < SAME_LENGTH_MM;
}

function onShadeMm({ finishedWidthMm: width, head }: HeadShape, xMm: number): number {
  const fallMm = head?.fallMm ?? 0;
  if (head?.kind === "angled") return xMm * Math.sqrt(1 + (fallMm / width) ** 2);
  const half = width / 2;
  if (fallMm > half) return ellipseMm(half, fallMm, xMm - half) + ellipseMm(half, fallMm, half);
  const radius = arcRadiusMm(width, fallMm);
  return radius * (Math.asin((xMm - half) / radius) + Math.asin(half / radius));
}

/** Of an arc through both ends and its crown: R = (w²/4 + f²) / 2f. */
function arcRadiusMm(width: number, fallMm: number): number {
  return (width ** 2 / 4 + fallMm ** 2) / (2 * fallMm);
}

const SIMPSON_STEPS = 64;

/** Along half an ellipse from its crown to a place beside it: ∫ √(a²cos²t + b²sin²t) dt up to sin t = x/a. */
function ellipseMm(a: number, b: number, xMm: number): number {
  const end = Math.asin(Math.min(1, Math.max(-1, xMm / a)));
  const step = end / SIMPSON_STEPS;
  let sum = 0;
  for (let i = 0; i <= SIMPSON_STEPS; i++) {
    const weight = i === 0 || i === SIMPSON_STEPS ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.hypot(a * Math.cos(i * step), b * Math.sin(i * step));
  }
  return (sum * step) / 3;
}

const ARC_STEPS = 64;

/** The head as a line from left to right. */
export function headLine(size: HeadShape): ShadePoint[] {
  const steps = size.head?.kind === "arched" ? ARC_STEPS : 1;
  return Array.from({ length: steps + 1 }, (_, i): ShadePoint => {
    const x = (size.finishedWidthMm * i) / steps;
    return [x, headYMm(size, x)];
  });
}
