import { type KeyboardEvent, type PointerEvent, useState } from "react";
import type { Placed } from "../../drawing/index.ts";
import { setPatch } from "../../figures/index.ts";
import type { Motif } from "../../shade-plan/index.ts";
import { lengthText, markMm, toMark } from "../../units/index.ts";
import { useShade } from "../shade/shade-context.tsx";
import { useCanEdit, useField, useUnits } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";

const CROSS_MM = 3.2;
const STEPS: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface MotifHandleProps {
  placed: Placed;
  motif: Motif;
  /** Millimetres of paper for one pixel. */
  mmPerPx: number;
}

/** Where a repeat begins, nearest to the middle of the shade: dragged, or moved by the arrow keys, mark by mark. */
export function MotifHandle({ placed, motif, mmPerPx }: MotifHandleProps) {
  const { plan, pointer } = useShade();
  const units = useUnits();
  const mine = useCanEdit();
  const held = useField(`${pointer}/shade/making/pattern`) as object | undefined;
  const [from, setFrom] = useState<readonly [number, number]>();
  const [moved, setMoved] = useState<readonly [number, number]>([0, 0]);
  const at = {
    xMm: nearest(motif.originXMm, motif.repeatXMm, plan.size.finishedWidthMm / 2),
    yMm: nearest(motif.originYMm, motif.repeatYMm, plan.size.finishedLengthMm / 2),
  };
  const put = (xMm: number, yMm: number, joins?: string) => {
    const { job } = usePlanner.getState();
    if (!job || !mine) return;
    const pattern = {
      ...held,
      place: "free",
      offsetMm: within(toMark(yMm, units.ruler), motif.repeatYMm),
      across: "offset",
      acrossMm: within(toMark(xMm, units.ruler), motif.repeatXMm),
    };
    const patch = setPatch(job, `${pointer}/shade/making/pattern`, pattern);
    edit({ label: "Place the motif", patch, ...(joins === undefined ? {} : { joins }) });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    const mark = markMm(units.ruler);
    put(at.xMm + step[0] * mark, at.yMm + step[1] * mark, "motif");
  };
  const mmPerUnit = 1 / placed.scale;
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
      onKeyDown={onKeyDown}
      onClick={(event) => event.stopPropagation()}
      onPointerDown={(event: PointerEvent<SVGGElement>) => {
        if (!mine) return;
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        setFrom([event.clientX, event.clientY]);
      }}
      onPointerMove={(event) => {
        if (from) setMoved([(event.clientX - from[0]) * mmPerPx, (event.clientY - from[1]) * mmPerPx]);
      }}
      onPointerUp={() => {
        if (from && (moved[0] !== 0 || moved[1] !== 0)) {
          put(at.xMm + moved[0] * mmPerUnit, at.yMm + moved[1] * mmPerUnit);
        }
        setFrom(undefined);
        setMoved([0, 0]);
      }}
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

/** The step of the lattice nearest to a place. */
function nearest(originMm: number, repeatMm: number, wishMm: number): number {
  return originMm + Math.round((wishMm - originMm) / repeatMm) * repeatMm;
}

function within(mm: number, repeatMm: number): number {
  const rest = mm - Math.floor(mm / repeatMm) * repeatMm;
  return Math.round(rest * 1000) / 1000;
}
