import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import "./four-corners.css";

/** A corner as shares of the picture's width and height. */
export type CornerShare = readonly [x: number, y: number];
export type CornerShares = readonly [CornerShare, CornerShare, CornerShare, CornerShare];

const NAMES = ["Upper left", "Upper right", "Lower right", "Lower left"] as const;
/** A key moves a corner by so much of the picture, with Shift by ten times that. */
const KEY_SHARE = 0.001;
const KEYS: Record<string, CornerShare> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface FourCornersProps {
  /** Whose corners, as the end of a name: “of the opening”. */
  of: string;
  corners: CornerShares;
  onMove(corners: CornerShares): void;
}

/** Four corners over a picture, dragged by mouse or finger, or moved by the arrow keys. */
export function FourCorners({ of, corners, onMove }: FourCornersProps) {
  const frame = useRef<HTMLDivElement>(null);
  const put = (index: number, [x, y]: CornerShare) => {
    const within = (share: number) => Math.min(1, Math.max(0, share));
    onMove(
      corners.map((corner, k) => (k === index ? [within(x), within(y)] : corner)) as unknown as CornerShares,
    );
  };
  const onPointerMove = (index: number) => (event: PointerEvent<HTMLElement>) => {
    const box = frame.current?.getBoundingClientRect();
    if (!box || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    put(index, [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height]);
  };
  const onKeyDown = (index: number) => (event: KeyboardEvent) => {
    const way = KEYS[event.key];
    if (!way) return;
    event.preventDefault();
    const step = KEY_SHARE * (event.shiftKey ? 10 : 1);
    const [x, y] = corners[index] as CornerShare;
    put(index, [x + step * way[0], y + step * way[1]]);
  };
  return (
    <div className="four-corners" ref={frame}>
      <svg className="four-corners-lines" viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true">
        <polygon points={corners.map(([x, y]) => `${x},${y}`).join(" ")} />
      </svg>
      {corners.map(([x, y], index) => (
        <button
          // biome-ignore lint/suspicious/noArrayIndexKey: corners have their order and nothing else
          key={index}
          type="button"
          className="corner"
          aria-label={`${NAMES[index]} corner ${of}: drag it, or move it by the arrow keys`}
          style={{ left: `${100 * x}%`, top: `${100 * y}%` }}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={onPointerMove(index)}
          onKeyDown={onKeyDown(index)}
        />
      ))}
    </div>
  );
}
