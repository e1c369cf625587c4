import { Fragment, memo, useMemo, useRef } from "react";
import { Link } from "wouter";
import {
  BETWEEN_MM,
  drawRoom,
  facesAsImages,
  place,
  type RoomView,
  standInRoom,
  svgNodes,
} from "../../drawing/index.ts";
import type { Job, Room } from "../../job/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import { useSmallPictures } from "../picture/use-small-pictures.ts";
import { sharedClothTint } from "../sheets/cloth-tint.ts";
import { RaiseSlider } from "../sheets/raise-slider.tsx";
import { SvgElement } from "../sheets/svg-node.tsx";
import { type ElementSize, useBox } from "../sheets/use-box.ts";
import { useJob } from "../state/fields.ts";
import { alignedRoomOf, shadePlanOf } from "../state/planning.ts";
import { useRaise } from "../state/raise.ts";
import { useSameItems } from "../state/use-same-items.ts";
import { useNear } from "./use-near.ts";
import "./elevations.css";
import { useEnglish } from "../state/english.ts";

const PX_PER_MM = 4.3;
/** A room of more windows than this stays in lines. */
const MOST_PICTURES = 12;

/** All rooms with their windows to one scale, on one floor. */
export function Elevations() {
  const job = useJob();
  const strip = useRef<HTMLDivElement>(null);
  const box = useBox(strip);
  const rooms = job.rooms
    .map((room, index) => ({ room, index }))
    .filter(({ room }) => room.windows.length > 0);
  if (rooms.length === 0) {
    return <p className="quiet elevations-empty">No windows yet. Add the first one below.</p>;
  }
  const scale = box ? commonScale(job, box) : undefined;
  return (
    <div className="elevations-plate">
      <div className="elevations" ref={strip}>
        {box && scale
          ? rooms.map(({ room, index }) => (
              <RoomElevation key={room.id} room={room} index={index} scale={scale} remPx={box.remPx} />
            ))
          : null}
      </div>
      <RaiseSlider />
    </div>
  );
}

/** What the heights of a room in line take beside it, in letters of the root. */
const LEVELS_REM = 8;
/** What lies below the floor line of a plain drawing, mm of paper: pen and margin. */
const BELOW_FLOOR_MM = 1.2;

/** Tallest and smallest height of the tallest window above its floor, in letters of the root. */
const TALL_REM = 22;
const LOW_REM = 12;

/**
 * Millimetres of paper for one of the wall: all rooms side by side where they fit;
 * where that would make them tiny, the row is longer than the page and moves sideways.
 */
function commonScale(job: Job, { widthPx, remPx }: ElementSize): number {
  const paperPx = (PX_PER_MM * remPx) / 16;
  let width = 0;
  let tallest = 1;
  let wordsPx = 0;
  for (const { windows, inLine } of job.rooms) {
    if (inLine !== undefined && windows.length > 1) wordsPx += LEVELS_REM * remPx;
    for (const { opening } of windows) {
      width += Math.max(...opening.widthsMm) + BETWEEN_MM;
      tallest = Math.max(tallest, Math.max(...opening.heightsMm) + (opening.sillAboveFloorMm ?? 0));
    }
    width += BETWEEN_MM / 2;
  }
  const fitting = Math.min(Math.max(widthPx / 2, widthPx - wordsPx) / width, (TALL_REM * remPx) / tallest);
  return Math.max(fitting, (LOW_REM * remPx) / tallest) / paperPx;
}

interface RoomElevationProps {
  room: Room;
  index: number;
  scale: number;
  remPx: number;
}

function RoomElevation({ room, index, scale, remPx }: RoomElevationProps) {
  const figure = useRef<HTMLElement>(null);
  // A job of two thousand windows draws those in sight.
  const near = useNear(figure);
  return (
    <figure className="elevation" ref={figure} aria-label={room.name}>
      {near ? <RoomSvg room={room} index={index} scale={scale} pxPerMm={(PX_PER_MM * remPx) / 16} /> : null}
      <figcaption>{room.name}</figcaption>
    </figure>
  );
}

function RoomSvg({ room, index, scale, pxPerMm }: Omit<RoomElevationProps, "remPx"> & { pxPerMm: number }) {
  const job = useJob();
  const raise = useRaise();
  const shades = useSameItems(
    room.windows.flatMap((_, window) => shadePlanOf(job, { room: index, window }) ?? []),
  );
  const alignment = alignedRoomOf(job, index)?.room.alignment;
  return (
    <DrawnRoom
      jobId={job.id}
      roomId={room.id}
      roomName={room.name}
      units={job.units}
      cloths={job.cloths}
      {...{ shades, alignment, raise, scale, pxPerMm }}
    />
  );
}

interface DrawnRoomProps {
  jobId: string;
  roomId: string;
  roomName: string;
  units: UnitChoice;
  cloths: Job["cloths"];
  shades: readonly ShadePlan[];
  alignment: RoomView["alignment"];
  raise: number;
  scale: number;
  pxPerMm: number;
}

/** Drawn anew only where one of its shades is another: an edit elsewhere in the job leaves it. */
const DrawnRoom = memo(function DrawnRoom(props: DrawnRoomProps) {
  useEnglish();
  const { jobId, roomId, roomName, units, cloths, shades, alignment, raise, scale, pxPerMm } = props;
  const pictures = useSmallPictures(shades, units, raise, shades.length <= MOST_PICTURES);
  const { placed, nodes, standing } = useMemo(() => {
    const view = { roomId, roomName, shades, ...(alignment === undefined ? {} : { alignment }) };
    const shown = { raise, names: false, ...(pictures === undefined ? {} : { pictures }) };
    const onPaper = place(drawRoom({ units }, view, shown), { scale });
    const nodes = facesAsImages(svgNodes(onPaper).children ?? [], onPaper);
    return { placed: onPaper, nodes, standing: standInRoom(shades) };
  }, [roomId, roomName, units, shades, alignment, raise, scale, pictures]);
  const [x0, y0] = placed.originMm;
  const tint = sharedClothTint("elevation-plate", shades, cloths);
  return (
    <div
      className={tint.className}
      style={{
        ...tint.style,
        width: placed.widthMm * pxPerMm,
        height: placed.heightMm * pxPerMm,
        // All rooms stand on one floor, whatever is written below it.
        marginBottom: (BELOW_FLOOR_MM + y0 - placed.heightMm) * pxPerMm,
      }}
    >
      <svg
        width={placed.widthMm * pxPerMm}
        height={placed.heightMm * pxPerMm}
        viewBox={`0 0 ${placed.widthMm} ${placed.heightMm}`}
        aria-hidden="true"
        data-drawn={pictures === undefined ? "lines" : "pictures"}
      >
        {nodes.map((node, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is painted in order; its items have no names
          <SvgElement key={at} node={node} />
        ))}
      </svg>
      {standing.map(({ shade, xMm, topMm, widthMm, heightMm }) => {
        const left = (xMm * scale + x0) * pxPerMm;
        const width = widthMm * scale * pxPerMm;
        const aside = (BETWEEN_MM * scale * pxPerMm) / 2 - 3;
        return (
          <Fragment key={shade.shadeId}>
            <Link
              href={`/job/${jobId}/${shade.shadeId}`}
              className="elevation-window"
              aria-label={`${shade.windowName}, ${lengthText(widthMm, units)} by ${lengthText(heightMm, units)}`}
              style={{
                left,
                top: (topMm * scale + y0) * pxPerMm,
                width,
                height: heightMm * scale * pxPerMm,
              }}
            />
            <span
              className="elevation-name"
              aria-hidden="true"
              style={{ left: left - aside, width: width + 2 * aside }}
            >
              {shade.windowName}
            </span>
          </Fragment>
        );
      })}
    </div>
  );
});
