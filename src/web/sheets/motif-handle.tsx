import { useRef, useState } from "react";
import { useMove } from "react-aria/useMove";
import type { Placed } from "../../drawing/index.ts";
import type { Motif } from "../../shade-plan/index.ts";
import { lengthText, markMm } from "../../units/index.ts";
import { useCanEdit, useUnits } from "../state/fields.ts";
import { useMotifPlace } from "./use-motif-place.ts";

const CROSS_MM = 3.2;

interface MotifHandleProps {
  placed: Placed;
  motif: Motif;
  /** Millimetres of paper for one pixel. */
  mmPerPx: number;
}

/** Where a repeat begins, nearest to the middle of the shade: dragged, or moved by the arrow keys, mark by mark. */
export function MotifHandle({ placed, motif, mmPerPx }: MotifHandleProps) {
  const units = useUnits();
  const mine = useCanEdit();
  const { at, put } = useMotifPlace(motif);
  const [moved, setMoved] = useState<readonly [number, number]>([0, 0]);
  const reached = useRef<readonly [number, number]>([0, 0]);
  const moveTo = (x: number, y: number) => {
    reached.current = [x, y];
    setMoved([x, y]);
  };
  const mmPerUnit = 1 / placed.scale;
  const { moveProps } = useMove({
    onMove({ pointerType, deltaX, deltaY }) {
      if (!mine) return;
      const mark = markMm(units.ruler);
      if (pointerType === "keyboard") put(at.xMm + deltaX * mark, at.yMm + deltaY * mark, "motif");
      else moveTo(reached.current[0] + deltaX * mmPerPx, reached.current[1] + deltaY * mmPerPx);
    },
    onMoveEnd() {
      const [x, y] = reached.current;
      moveTo(0, 0);
      if (x !== 0 || y !== 0) put(at.xMm + x * mmPerUnit, at.yMm + y * mmPerUnit);
    },
  });
  const x = placed.originMm[0] + at.xMm * placed.scale + moved[0];
  const y = placed.originMm[1] + at.yMm * placed.scale + moved[1];
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button of its own
    <g
      className="motif-handle"
      role="button"
      tabIndex={0}
      aria-label={`A repeat begins ${lengthText(at.yMm, units)} below the top line and ${lengthText(at.xMm, units)} from the left edge: drag it, or move it by the arrow keys`}
      transform={`translate(${x} ${y})`}
      {...moveProps}
      onClick={(event) => event.stopPropagation()}
    >
      <circle r={CROSS_MM * 1.6} fill="transparent" />
      <path
        d={`M${-CROSS_MM} 0H${CROSS_MM}M0 ${-CROSS_MM}V${CROSS_MM}`}
        stroke="var(--sw-accent)"
        strokeWidth={0.5}
      />
      <circle r={CROSS_MM * 0.55} fill="var(--sw-paper)" stroke="var(--sw-accent)" strokeWidth={0.4} />
    </g>
  );
}
