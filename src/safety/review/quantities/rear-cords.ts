import { figureRule } from "../../../figures/index.ts";
import { cite } from "../../../sources/index.ts";
import { SAME_LENGTH_MM } from "../../../units/index.ts";
import type { CordGeometry, RearSpan } from "../cord-geometry.ts";
import { CHILD_PULL, canFeed, drawnAtBoardMm, drawnMm, lowerGuideMm, spanCordMm } from "../feed.ts";
import { joinedLoopAt, joinedStates, looseLoopAt, pullStates } from "./pull-cords.ts";
import type { Ask, Sweep } from "./quantity.ts";
import { gatherStates } from "./states.ts";

const NO_REAR = "No lift cord runs up the back.";
const ENCLOSED = "The lift cords run in a sewn sleeve and are counted as out of reach.";

/** What the lengths between two guides rest on. */
const BETWEEN_GUIDES = ["figure:shape.*", "figure:measure.finished-length"] as const;

const CORD_AND_CLOTH = figureRule({
  id: "safety.loop-perimeter",
  label: "Around the loop of cord and cloth between two guides",
  symbol: "P",
  unit: "mm",
  formula: "g + c",
  inputs: {
    g: ["mm", "cord between the guides", ...BETWEEN_GUIDES, "board/section", "lift/kind", "fold/topDropMm"],
    c: ["mm", "cloth between them", ...BETWEEN_GUIDES],
  },
  cite: cite("geometry"),
  compute: ({ g, c }) => g + c,
});

/** Longest cord between two neighbouring points that hold it: ring and ring, ring and eye, eye and eye. */
export const cordBetweenContacts: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: noReach,
  states: gatherStates,
  at: (geometry, raise) => Math.max(boardSpanMm(geometry), rearAt(geometry, raise, spanCord)),
  pulledAt: (geometry, raise, ask) =>
    Math.max(pulledBoardSpanMm(geometry, raise, ask), rearAt(geometry, raise, pulledCord, ask)),
  feeds,
  what: (geometry, raise) =>
    boardSpanMm(geometry) > rearAt(geometry, raise, spanCord)
      ? "the cord between two eyes on the board"
      : `the cord ${betweenText(worstSpan(geometry, raise, spanCord))}`,
};

/** Longest way around a loop: cord and cloth between two guides, joined cords, an operating loop. */
export const loopPerimeter: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: noLoop,
  states: loopStates,
  at: (geometry, raise) => Math.max(frontLoopMm(geometry, raise), rearAt(geometry, raise, spanLoop)),
  pulledAt: (geometry, raise, ask) =>
    Math.max(frontLoopMm(geometry, raise), rearAt(geometry, raise, pulledLoop, ask)),
  feeds,
  what: (geometry, raise) =>
    frontLoopMm(geometry, raise) >= rearAt(geometry, raise, spanLoop)
      ? frontLoopText(geometry, raise)
      : `the loop of cord and cloth ${betweenText(worstSpan(geometry, raise, spanLoop))}`,
  working: (geometry, raise) => {
    if (frontLoopMm(geometry, raise) >= rearAt(geometry, raise, spanLoop)) return undefined;
    const span = worstSpan(geometry, raise, spanLoop);
    if (span === undefined) return undefined;
    return CORD_AND_CLOTH.figure({ g: spanCordMm(span, raise * geometry.travelMm), c: span.clothMm });
  },
};

/** Guides of the rear cords, the one at the board included. */
export const rearGuideSpacing: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: unreachable,
  states: gatherStates,
  at: (geometry, raise) => rearAt(geometry, raise, spanCord),
  what: (geometry, raise) => `the distance ${betweenText(worstSpan(geometry, raise, spanCord))}`,
};

/** Half of the way around the longest loop of guided cord at a height or lower. */
export const guidedLoopLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: (geometry) =>
    geometry.loop?.device === "tensioner" || geometry.loop?.device === "breakaway"
      ? undefined
      : unreachable(geometry),
  needsFloor: true,
  // Guides only rise out of the height that counts, so that the last to count are those that did lowered.
  states: gatherStates,
  at: (geometry, raise, ask) =>
    Math.max(heldLoopMm(geometry, ask), rearAt(geometry, raise, spanLoop, ask) / 2),
  pulledAt: (geometry, raise, ask) =>
    Math.max(heldLoopMm(geometry, ask), rearAt(geometry, raise, pulledLoop, ask) / 2),
  feeds,
  what: () => "the loop of guided cord",
};

/** Half of the way around the longest loop of any cord. */
export const anyLoopLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: (geometry) => (geometry.pulls.length === 0 ? noLoop(geometry) : undefined),
  states: (geometry) => [...loopStates(geometry), ...pullStates(geometry)],
  at: (geometry, raise, ask) =>
    Math.max(looseLoopAt(geometry, raise, ask), loopPerimeter.at(geometry, raise, ask) / 2),
  feeds,
  what: (geometry, raise, ask) =>
    looseLoopAt(geometry, raise, ask) > loopPerimeter.at(geometry, raise, ask) / 2
      ? "the loop that the hanging cords can form"
      : loopPerimeter.what(geometry, raise, ask),
};

type OfSpan = (geometry: CordGeometry, span: RearSpan, liftMm: number, pullN: number) => number;

function spanCord(_: CordGeometry, span: RearSpan, liftMm: number): number {
  return spanCordMm(span, liftMm);
}

function spanLoop(_: CordGeometry, span: RearSpan, liftMm: number): number {
  return spanCordMm(span, liftMm) + span.clothMm;
}

function pulledCord(geometry: CordGeometry, span: RearSpan, liftMm: number, pullN: number): number {
  const { rear, travelMm } = geometry;
  return spanCordMm(span, liftMm) + (rear === undefined ? 0 : drawnMm(rear, span, pullN, liftMm, travelMm));
}

function pulledLoop(geometry: CordGeometry, span: RearSpan, liftMm: number, pullN: number): number {
  return pulledCord(geometry, span, liftMm, pullN) + span.clothMm;
}

/** Worst over the spans of one column, which is any column's; spans above the asked height do not count. */
function rearAt(geometry: CordGeometry, raise: number, of: OfSpan, ask: Ask = {}): number {
  const { rear, travelMm } = geometry;
  if (rear === undefined || rear.guide === "enclosed") return 0;
  const liftMm = raise * travelMm;
  let most = 0;
  for (const span of rear.spans) {
    if (tooHigh(geometry, span, liftMm, ask)) continue;
    most = Math.max(most, of(geometry, span, liftMm, ask.pullN ?? CHILD_PULL.value));
  }
  return most;
}

function worstSpan(geometry: CordGeometry, raise: number, of: OfSpan): RearSpan | undefined {
  const { rear, travelMm } = geometry;
  let worst: RearSpan | undefined;
  let most = -1;
  for (const span of rear?.spans ?? []) {
    const value = of(geometry, span, raise * travelMm, 0);
    if (value > most) {
      most = value;
      worst = span;
    }
  }
  return worst;
}

function tooHigh(geometry: CordGeometry, span: RearSpan, liftMm: number, { belowFloorMm }: Ask): boolean {
  if (belowFloorMm === undefined || geometry.topAboveFloorMm === undefined) return false;
  return geometry.topAboveFloorMm - lowerGuideMm(span, liftMm) > belowFloorMm + SAME_LENGTH_MM;
}

function boardSpanMm({ rear }: CordGeometry): number {
  let most = 0;
  for (const spanMm of rear?.boardSpansMm ?? []) most = Math.max(most, spanMm);
  return most;
}

function pulledBoardSpanMm(geometry: CordGeometry, raise: number, { pullN }: Ask): number {
  const { rear, travelMm } = geometry;
  const spanMm = boardSpanMm(geometry);
  if (rear === undefined || spanMm === 0) return 0;
  return spanMm + drawnAtBoardMm(rear, spanMm, pullN ?? CHILD_PULL.value, raise * travelMm, travelMm);
}

function frontLoopMm(geometry: CordGeometry, raise: number): number {
  return Math.max(joinedLoopAt(geometry, raise), geometry.loop?.perimeterMm ?? 0);
}

function frontLoopText(geometry: CordGeometry, raise: number): string {
  return joinedLoopAt(geometry, raise) > (geometry.loop?.perimeterMm ?? 0)
    ? "the loop between the lock and the connector of the cords"
    : "the operating loop";
}

/** An operating loop on a device, where it reaches down to the asked height. */
function heldLoopMm(geometry: CordGeometry, { belowFloorMm }: Ask): number {
  const { loop, topAboveFloorMm } = geometry;
  if (loop === undefined || loop.device === "none") return 0;
  const lengthMm = loop.perimeterMm / 2;
  if (belowFloorMm === undefined || topAboveFloorMm === undefined) return lengthMm;
  const lowMm = topAboveFloorMm - loop.exitBelowTopMm - loop.dropMm;
  return lowMm > belowFloorMm + SAME_LENGTH_MM ? 0 : lengthMm;
}

function loopStates(geometry: CordGeometry): number[] {
  return [...gatherStates(geometry), ...joinedStates(geometry)];
}

function noLoop(geometry: CordGeometry): string | undefined {
  if (geometry.loop !== undefined || joinedStates(geometry).length > 0) return undefined;
  return noReach(geometry);
}

function noReach({ rear }: CordGeometry): string | undefined {
  if (rear === undefined) return NO_REAR;
  return rear.guide === "enclosed" && rear.boardSpansMm.length === 0 ? ENCLOSED : undefined;
}

/** No cord in reach between guides on the cloth. */
function unreachable({ rear }: CordGeometry): string | undefined {
  if (rear === undefined) return NO_REAR;
  return rear.guide === "enclosed" ? ENCLOSED : undefined;
}

function feeds({ rear, travelMm }: CordGeometry, { pullN }: Ask): boolean {
  return rear !== undefined && canFeed(rear, pullN ?? CHILD_PULL.value, travelMm);
}

function betweenText(span: RearSpan | undefined): string {
  return span?.top === true ? "between the top ring and the board" : "between two rings";
}
