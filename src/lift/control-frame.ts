import { acrossAtMm, alongHeadMm, type HeadShape, headYMm } from "../shade-plan/index.ts";

/**
 * Places on the board as distances along it from the finished edge on the control side, so that a shade worked on
 * the left is planned by the very same steps as one worked on the right and comes out as its mirror image.
 */
export interface ControlFrame {
  side: "left" | "right";
  /** The head that the board follows; a tube hangs level whatever the head does. */
  head: HeadShape;
}

/** From the control side along the board to a place across the shade, given from its left finished edge, mm. */
export function alongFromControl({ side, head }: ControlFrame, xMm: number): number {
  return side === "right" ? alongHeadMm(head, xMm, head.finishedWidthMm) : alongHeadMm(head, 0, xMm);
}

/** From the left finished edge across to a place on the board, given along it from the control side, mm. */
export function acrossFromControl({ side, head }: ControlFrame, alongMm: number): number {
  return side === "right" ? acrossAtMm(head, head.finishedWidthMm, -alongMm) : acrossAtMm(head, 0, alongMm);
}

/**
 * Where places on the board lie, given along it from the control side: across from the left finished edge, and below the
 * top line, mm. A search asks for the same eyes again and again, and along half an ellipse each takes a search of its
 * own, so places are remembered.
 */
export function placesOnBoard(
  frame: ControlFrame,
): (alongMm: number) => { acrossMm: number; downMm: number } {
  const known = new Map<number, { acrossMm: number; downMm: number }>();
  return (alongMm) => {
    const before = known.get(alongMm);
    if (before !== undefined) return before;
    const acrossMm = acrossFromControl(frame, alongMm);
    const place = { acrossMm, downMm: headYMm(frame.head, acrossMm) };
    known.set(alongMm, place);
    return place;
  };
}

/** Both ends of a stretch across the shade, in rising order whichever side it was measured from. */
export function stretchAcross(frame: ControlFrame, [from, to]: readonly [number, number]): [number, number] {
  const a = acrossFromControl(frame, from);
  const b = acrossFromControl(frame, to);
  return a <= b ? [a, b] : [b, a];
}
