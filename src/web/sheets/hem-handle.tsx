import { type PointerEvent, useState } from "react";
import type { Placed } from "../../drawing/index.ts";
import { useShadeNow } from "../shade/shade-context.tsx";
import { setRaise, useRaise } from "../state/raise.ts";

/** As tall as a fingertip is wide, px: WCAG 2.2, 2.5.5 Target Size (Enhanced). */
const FINGER_PX = 44;

interface HemHandleProps {
  placed: Placed;
  /** Left edge and width of the drawing's box, mm of paper. */
  box: { xMm: number; widthMm: number };
  pxPerMm: number;
}

/** The hem, to be taken hold of and raised or let down; the slider does the same for keys. */
export function HemHandle({ placed, box, pxPerMm }: HemHandleProps) {
  const { plan } = useShadeNow();
  const raise = useRaise();
  const [held, setHeld] = useState<{ fromPx: number; raise: number }>();
  const loweredMm = plan.size.finishedLengthMm;
  const travelMm = loweredMm - plan.grid.raisedHeightMm;
  if (!(travelMm > 0)) return null;
  const hemMm = placed.originMm[1] + (loweredMm - raise * travelMm) * placed.scale;
  const halfMm = FINGER_PX / 2 / pxPerMm;
  const move = (event: PointerEvent) => {
    if (!held) return;
    const upMm = (held.fromPx - event.clientY) / pxPerMm / placed.scale;
    setRaise(Math.min(1, Math.max(0, held.raise + upMm / travelMm)));
  };
  return (
    <rect
      className="hem-handle"
      data-testid="hem"
      x={box.xMm}
      y={hemMm - halfMm}
      width={box.widthMm}
      height={2 * halfMm}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setHeld({ fromPx: event.clientY, raise });
      }}
      onPointerMove={move}
      onPointerUp={() => setHeld(undefined)}
      onPointerCancel={() => setHeld(undefined)}
    />
  );
}
