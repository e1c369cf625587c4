/**
 * Places along the board as distances from the finished edge on the control side, so that a shade worked on
 * the left is planned by the very same steps as one worked on the right and comes out as its mirror image.
 */
export interface ControlFrame {
  side: "left" | "right";
  widthMm: number;
}

/** From the left finished edge to the distance from the control side, and back: the map is its own inverse. */
export function mirrored({ side, widthMm }: ControlFrame, placeMm: number): number {
  return side === "right" ? widthMm - placeMm : placeMm;
}

/** Both ends of a stretch, in rising order again after mirroring. */
export function mirroredStretch(
  frame: ControlFrame,
  [from, to]: readonly [number, number],
): [number, number] {
  const a = mirrored(frame, from);
  const b = mirrored(frame, to);
  return a <= b ? [a, b] : [b, a];
}
