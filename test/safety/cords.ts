import type {
  CordGeometry,
  OperatingLoop,
  PullCords,
  RearCords,
  RearSpan,
} from "../../src/safety/review/cord-geometry.ts";
import { type Course, fromTo, steady } from "../../src/safety/review/course.ts";

/** A shade without a cord, to hang cords on: 1.5 m high, its top 2.4 m above the floor with nothing to stand on, travel 1.2 m. */
export function bare(over: Partial<CordGeometry> = {}): CordGeometry {
  return {
    kind: "spring",
    pulls: [],
    stretchPerN: 0,
    blindHeightMm: 1500,
    topAboveFloorMm: 2400,
    footholdMm: 0,
    hemBelowTopMm: 1500,
    travelMm: 1200,
    ...over,
  };
}

/** The same with the window's height not known. */
export function heightless(geometry: CordGeometry): CordGeometry {
  const { topAboveFloorMm: _known, ...rest } = geometry;
  return rest;
}

/** Cords that hang from 50 mm below the top line. */
export function pulls(lengthMm: Course | number, over: Partial<PullCords> = {}): PullCords {
  return {
    raises: "shade",
    from: "lock",
    count: 1,
    lengthMm: typeof lengthMm === "number" ? steady(lengthMm) : lengthMm,
    exitBelowTopMm: 50,
    cleatAboveFloorMm: 1600,
    ...over,
  };
}

export function hanging(lengthMm: Course | number, over: Partial<PullCords> = {}): CordGeometry {
  return bare({ kind: "cord-lock", pulls: [pulls(lengthMm, over)] });
}

/** A cord that hangs longest half way up: no cord lock does, a take-up spool might. */
export function longestMidway(endsMm: number, midwayMm: number): Course {
  return { raise: [0, 0.5, 1], mm: [endsMm, midwayMm, endsMm] };
}

export function looped(
  dropMm: number,
  device: OperatingLoop["device"] = "tensioner",
  over: Partial<CordGeometry> = {},
): CordGeometry {
  return bare({
    kind: "tube-loop",
    loop: { dropMm, perimeterMm: 2 * dropMm, device, exitBelowTopMm: 50 },
    ...over,
  });
}

/** Rear cords over spans of these lengths, the last of which ends at the board. */
export function rears(spansMm: readonly number[], over: Partial<RearCords> = {}): RearCords {
  let startsMm = 0;
  let belowTopMm = spansMm.reduce((sum, span) => sum + span, 0);
  const spans = spansMm.map((cordMm, i): RearSpan => {
    const span = {
      cordMm,
      clothMm: cordMm,
      gathersMm: cordMm,
      startsMm,
      lowerBelowTopMm: belowTopMm,
      top: i === spansMm.length - 1,
    };
    startsMm += cordMm;
    belowTopMm -= cordMm;
    return span;
  });
  return {
    count: 3,
    guide: "open",
    spans,
    endBelowTopMm: 0,
    boardSpansMm: [],
    heldN: spans.map(() => 9),
    leastShare: 0.25,
    friction: 0.25,
    wrapBelowRad: 0,
    top: { holds: true },
    ...over,
  };
}

export function backed(
  spansMm: readonly number[],
  over: Partial<RearCords> = {},
  shade: Partial<CordGeometry> = {},
  moreClothMm = 0,
): CordGeometry {
  const rear = rears(spansMm, over);
  for (const span of rear.spans) span.clothMm += moreClothMm;
  return bare({
    travelMm: spansMm.reduce((sum, span) => sum + span, 0),
    rear,
    ...shade,
  });
}

export { fromTo, steady };
