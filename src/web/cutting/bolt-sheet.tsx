import { memo, type PointerEvent, useLayoutEffect, useMemo, useRef, useState } from "react";
import { useMove } from "react-aria/useMove";
import type { BoltPlan, Placement } from "../../cutting/index.ts";
import { areaOnBolt, drawBoltPlan, type Placed, place, speltDrawing, svgNodes } from "../../drawing/index.ts";
import { spellerOf } from "../../job/index.ts";
import { type ClothCutting, pieceNames } from "../../plan/index.ts";
import { FactsTable } from "../sheets/facts-table.tsx";
import { SvgElement } from "../sheets/svg-node.tsx";
import { useEnglish } from "../state/english.ts";
import { useUnits } from "../state/fields.ts";

/** Pixels for one millimetre of paper where letters are 16 px. */
const PX_PER_MM = 4.3;
/** The width of a bolt on the screen, mm of paper: strips of a few centimetres can still be told apart. */
const BOLT_MM = 62;

interface BoltSheetProps {
  cloth: ClothCutting;
  bolt: BoltPlan;
  onMove: (placement: Placement) => void;
}

/** One bolt to scale, its end at the left, for a left-handed cutter at the right; wider than the page it scrolls. */
export function BoltSheet({ cloth, bolt, onMove }: BoltSheetProps) {
  const units = useUnits();
  const english = useEnglish();
  const widthMm = cloth.problem.bolts.find(({ id }) => id === bolt.boltId)?.widthMm ?? 1000;
  const placed = useMemo(() => {
    const drawing = speltDrawing(drawBoltPlan({ units, cutting: cloth, bolt }), spellerOf(english));
    return place(drawing, { scale: BOLT_MM / widthMm });
  }, [units, english, cloth, bolt, widthMm]);
  const names = useMemo(() => pieceNames(cloth), [cloth]);
  const leftHanded = cloth.problem.table?.leftHanded === true;
  const room = useRef<HTMLDivElement>(null);
  // The end that is cut first is seen first.
  useLayoutEffect(() => {
    if (room.current) room.current.scrollLeft = leftHanded ? room.current.scrollWidth : 0;
  }, [leftHanded]);
  return (
    <figure className="bolt">
      <div className="bolt-room" ref={room}>
        {/* biome-ignore lint/a11y/useSemanticElements: SVG has no fieldset of its own */}
        <svg
          className="bolt-svg"
          width={placed.widthMm * PX_PER_MM}
          height={placed.heightMm * PX_PER_MM}
          viewBox={`0 0 ${placed.widthMm} ${placed.heightMm}`}
          role="group"
          aria-label={`${placed.title}. ${placed.caption}`}
        >
          <BoltDrawing placed={placed} />
          {bolt.placements.map((placement) => (
            <Handle
              key={placement.pieceId}
              placement={placement}
              name={names.get(placement.pieceId) ?? placement.pieceId}
              placed={placed}
              area={areaOnBolt({ cutting: cloth, bolt }, placement)}
              leftHanded={leftHanded}
              onMove={onMove}
            />
          ))}
        </svg>
      </div>
      <figcaption className="sheet-caption">
        <span className="caption-words">
          {placed.title}. {placed.caption}
        </span>{" "}
        <FactsTable facts={placed.facts} />
      </figcaption>
    </figure>
  );
}

const BoltDrawing = memo(function BoltDrawing({ placed }: { placed: Placed }) {
  const nodes = useMemo(() => svgNodes(placed).children ?? [], [placed]);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in the picture takes the focus; the handles above it do
    <g aria-hidden="true">
      {nodes.map((node, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is painted in order; its items have no names
        <SvgElement key={at} node={node} />
      ))}
    </g>
  );
});

/** Steps of the arrow keys on the cloth, mm; with shift the larger. */
const STEP_MM = 5;
const LARGE_STEP_MM = 50;

interface HandleProps {
  placement: Placement;
  name: string;
  placed: Placed;
  /** Where it lies on the drawing. */
  area: ReturnType<typeof areaOnBolt>;
  /** The bolt is drawn turned half round. */
  leftHanded: boolean;
  onMove: (placement: Placement) => void;
}

/** What the pointer takes hold of: a piece, moved along and across the bolt in whole millimetres. */
function Handle({ placement, name, placed, area, leftHanded, onMove }: HandleProps) {
  const [shift, setShift] = useState<readonly [number, number]>();
  const reachedPx = useRef<readonly [number, number]>([0, 0]);
  const { scale, originMm } = placed;
  const [dx, dy] = shift ?? [0, 0];
  /** To the right and down on the drawing: along the bolt, and towards the selvedge from which x counts. */
  const move = (rightMm: number, downMm: number) => {
    if (rightMm === 0 && downMm === 0) return;
    const way = leftHanded ? -1 : 1;
    onMove({ ...placement, yMm: placement.yMm + way * rightMm, xMm: placement.xMm - way * downMm });
  };
  const inMm = (px: number) => Math.round(px / PX_PER_MM / scale);
  const { moveProps } = useMove({
    onMove({ pointerType, deltaX, deltaY, shiftKey }) {
      if (pointerType === "keyboard") {
        const mm = shiftKey ? LARGE_STEP_MM : STEP_MM;
        move(deltaX * mm, deltaY * mm);
        return;
      }
      const [x, y] = reachedPx.current;
      reachedPx.current = [x + deltaX, y + deltaY];
      setShift([inMm(x + deltaX), inMm(y + deltaY)]);
    },
    onMoveEnd() {
      const [x, y] = reachedPx.current;
      reachedPx.current = [0, 0];
      setShift(undefined);
      move(inMm(x), inMm(y));
    },
  });
  const onPointerDown = (event: PointerEvent<SVGRectElement>) => {
    // A first touch chooses the piece; it may as well be the beginning of a scroll.
    if (event.pointerType === "touch" && document.activeElement !== event.currentTarget) return;
    moveProps.onPointerDown?.(event);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button of its own
    <rect
      className="bolt-handle"
      role="button"
      tabIndex={0}
      aria-label={`${name}: move it`}
      data-moving={shift !== undefined || undefined}
      x={originMm[0] + scale * (area.x + dx)}
      y={originMm[1] + scale * (area.y + dy)}
      width={scale * area.width}
      height={scale * area.height}
      {...moveProps}
      onPointerDown={onPointerDown}
    />
  );
}
