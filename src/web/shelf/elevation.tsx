import { useEffect, useMemo, useRef, useState } from "react";
import { drawRoom, facesAsImages, place, svgNodes } from "../../drawing/index.ts";
import type { Job } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { useNear } from "../job/use-near.ts";
import { readStoredJob } from "../persistence/job-shelf.ts";
import { useSmallPictures } from "../picture/use-small-pictures.ts";
import { SvgElement } from "../sheets/svg-node.tsx";
import { openJob } from "../state/job-door.ts";
import { shadePlanOf } from "../state/planning.ts";

/** Windows that a card shows; the rest are counted in words. */
const MOST = 9;
/** High enough to tell the styles apart. */
const RAISE = 0.35;
const BOX = { maxWidthMm: 62, maxHeightMm: 34 };

/** A job's windows in small, as they stand side by side. */
export function Elevation({ jobId, savedAt }: { jobId: string; savedAt: number }) {
  const [job, setJob] = useState<Job>();
  useEffect(() => {
    let wanted = true;
    // `savedAt` changes with every save: the card is read again.
    void savedAt;
    readStoredJob(jobId)
      .then((stored) => {
        const opened = stored && openJob(stored.job);
        if (wanted && opened?.ok) setJob(opened.job);
      })
      .catch(() => {});
    return () => {
      wanted = false;
    };
  }, [jobId, savedAt]);
  return job ? <JobSvg job={job} /> : null;
}

function JobSvg({ job }: { job: Job }) {
  const shades = useMemo(() => {
    const places = job.rooms.flatMap((room, r) => room.windows.map((_, w) => ({ room: r, window: w })));
    return places.slice(0, MOST).flatMap((at): ShadePlan[] => {
      const shade = shadePlanOf(job, at);
      return shade ? [shade] : [];
    });
  }, [job]);
  const svg = useRef<SVGSVGElement>(null);
  const near = useNear(svg);
  const pictures = useSmallPictures(shades, job.units, RAISE, near);
  const placed = useMemo(() => {
    const row = { roomId: job.id, roomName: job.name, shades };
    const shown = { raise: RAISE, names: false, ...(pictures === undefined ? {} : { pictures }) };
    return place(drawRoom(job, row, shown), BOX);
  }, [job, shades, pictures]);
  const nodes = useMemo(() => facesAsImages(svgNodes(placed).children ?? [], placed), [placed]);
  return (
    <svg
      ref={svg}
      data-drawn={pictures === undefined ? "lines" : "pictures"}
      className="shelf-elevation"
      viewBox={`0 0 ${placed.widthMm} ${placed.heightMm}`}
      style={{ aspectRatio: placed.widthMm / placed.heightMm }}
      aria-hidden="true"
    >
      {nodes.map((node, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is painted in order; its items have no names
        <SvgElement key={at} node={node} />
      ))}
    </svg>
  );
}
