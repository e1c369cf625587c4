import type { ShadePoint } from "./form.ts";
import type { Size } from "./size.ts";

/** Where the head of the shade runs at a place across it, mm below the top line: 0 where it is level. */
export function headYMm(
  { finishedWidthMm: width, head }: Pick<Size, "finishedWidthMm" | "head">,
  xMm: number,
): number {
  if (head === undefined || width <= 0 || head.fallMm <= 0) return 0;
  const x = Math.min(Math.max(xMm, 0), width);
  if (head.kind === "angled") return (head.fallMm * (head.high === "left" ? x : width - x)) / width;
  // An arc through both ends and its crown: R = (w²/4 + f²) / 2f.
  const radius = (width ** 2 / 4 + head.fallMm ** 2) / (2 * head.fallMm);
  const fromMiddle = x - width / 2;
  // More than half a circle would overhang its ends.
  if (head.fallMm > width / 2)
    return head.fallMm * (1 - Math.sqrt(Math.max(0, 1 - ((2 * fromMiddle) / width) ** 2)));
  // The same as R − √(R² − d²), without the difference of two large numbers where the arc is all but flat.
  return fromMiddle ** 2 / (radius + Math.sqrt(Math.max(0, radius ** 2 - fromMiddle ** 2)));
}

const ARC_STEPS = 64;

/** The head as a line from left to right. */
export function headLine(size: Pick<Size, "finishedWidthMm" | "head">): ShadePoint[] {
  const steps = size.head?.kind === "arched" ? ARC_STEPS : 1;
  return Array.from({ length: steps + 1 }, (_, i): ShadePoint => {
    const x = (size.finishedWidthMm * i) / steps;
    return [x, headYMm(size, x)];
  });
}
