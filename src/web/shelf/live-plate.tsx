import { useMemo, useRef } from "react";
import { svgNodes } from "../../drawing/index.ts";
import type { Mount } from "../../job/index.ts";
import type { UnitSystem } from "../../units/index.ts";
import { CAPTION_REM, placeSheet } from "../sheets/sheet-placing.ts";
import { SvgElement } from "../sheets/svg-node.tsx";
import { type ElementSize, useBox } from "../sheets/use-box.ts";
import { newJob, newWindow } from "../state/job-door.ts";
import { shadePlanOf } from "../state/planning.ts";

interface LivePlateProps {
  widthMm: number;
  heightMm: number;
  mount: Mount;
  system: UnitSystem;
  /** What of the drawing is only an example; undefined where all of it is what was typed. */
  example: string | undefined;
}

const PX_PER_MM = 4.3;

/** The shade as it will be, from the first keystroke. */
export function LivePlate(props: LivePlateProps) {
  const plate = useRef<HTMLDivElement>(null);
  const box = useBox(plate);
  return (
    <div className="live-plate" ref={plate}>
      {box && box.widthPx > 0 ? <LiveDrawing {...props} box={box} /> : null}
    </div>
  );
}

function LiveDrawing({
  widthMm,
  heightMm,
  mount,
  system,
  example,
  box,
}: LivePlateProps & { box: ElementSize }) {
  const pxPerMm = (PX_PER_MM * box.remPx) / 16;
  const onScreen = useMemo(() => {
    const job = newJob({ id: "first-look", name: "First look", system });
    const window = newWindow({ id: "window-1", name: "Window", widthMm, heightMm, mount });
    const [room] = job.rooms;
    const shade =
      room && shadePlanOf({ ...job, rooms: [{ ...room, windows: [window] }] }, { room: 0, window: 0 });
    return (
      shade &&
      placeSheet("front", shade, job.units, 0, {
        maxWidthMm: box.widthPx / pxPerMm,
        maxHeightMm: (box.heightPx - CAPTION_REM * box.remPx) / pxPerMm,
      })
    );
  }, [widthMm, heightMm, mount, system, box.widthPx, box.heightPx, box.remPx, pxPerMm]);
  if (!onScreen) return null;
  const { placed, box: sheet } = onScreen;
  return (
    <figure className="live-drawing">
      <svg
        width={sheet.widthMm * pxPerMm}
        height={sheet.heightMm * pxPerMm}
        viewBox={`${sheet.xMm} ${sheet.yMm} ${sheet.widthMm} ${sheet.heightMm}`}
        role="img"
        aria-label={placed.facts.map((fact) => `${fact.label} ${fact.text}`).join(", ")}
      >
        {(svgNodes(placed).children ?? []).map((node, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is painted in order; its items have no names
          <SvgElement key={at} node={node} />
        ))}
      </svg>
      <figcaption>{example ?? placed.caption}</figcaption>
    </figure>
  );
}
