import { figureRule } from "../../../figures/index.ts";
import { CHILD_PULL } from "../../../job/index.ts";
import { cite } from "../../../sources/index.ts";
import { SAME_LENGTH_MM } from "../../../units/index.ts";
import type { CordGeometry, OperatingLoop, RearSpan } from "../cord-geometry.ts";
import { canFeed, drawnAtBoardMm, drawnMm, lowerGuideMm, spanCordMm } from "../feed.ts";
import {
  hasLead,
  LEAD,
  LEAD_LOOP,
  leadBelowMm,
  leadMm,
  leansOnBoth,
  leansOnClips,
  leansOnClipsBelow,
} from "./lead.ts";
import {
  joinedLoopAt,
  joinedStates,
  longest,
  looseLoop,
  looseLoopAt,
  pullStates,
  stretchedMm,
} from "./pull-cords.ts";
import type { CheckedAgainst, LeansOn, NamedCord, Sweep } from "./quantity.ts";
import { gatherStates } from "./states.ts";

const NO_REAR = "No lift cord runs up the back.";

/** Closed guides count for nothing until they are pulled at: what a needle or a grip does no plan shows. */
export function leansOnGuide({ rear }: CordGeometry): LeansOn | undefined {
  switch (rear?.guide) {
    case "enclosed":
      return {
        why: "The lift cords run in sleeves sewn by hand, and each is bare where it leaves its sleeve below the board. Whether no cord can be reached or drawn out shows only in the test.",
        test: "pull-enclosure",
      };
    case "ring-locked":
      return {
        why: "Between two rings that is so for as long as each ring grips its sleeve under a pull, which only the test shows.",
        test: "pull-enclosure",
      };
    case "open":
    case undefined:
      return undefined;
  }
}

/** Guides at the back, and clips of a lead. */
export function leansOnHeld(geometry: CordGeometry): LeansOn | undefined {
  return leansOnBoth(leansOnGuide(geometry), leansOnClips(geometry));
}

/** The same where any of it hangs as low as is asked. */
function leansOnGuideBelow(geometry: CordGeometry, ask: CheckedAgainst): LeansOn | undefined {
  return geometry.rear?.spans.some((span) => !tooHigh(geometry, span, 0, ask))
    ? leansOnGuide(geometry)
    : undefined;
}

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
  absent: noSpan,
  states: gatherStates,
  at: (geometry, raise) =>
    Math.max(
      leadMm(geometry),
      loopSideMm(geometry),
      boardSpanMm(geometry),
      railSpanMm(geometry),
      rearAt(geometry, raise, spanCord),
    ),
  pulledAt: (geometry, raise, ask) =>
    Math.max(
      leadMm(geometry),
      stretchedMm(
        geometry,
        Math.max(loopSideMm(geometry), railSpanMm(geometry)),
        ask.pullN ?? CHILD_PULL.value,
      ),
      pulledBoardSpanMm(geometry, raise, ask),
      rearAt(geometry, raise, pulledCord, ask),
    ),
  feeds,
  leansOn: leansOnHeld,
  what: (geometry, raise) => {
    const longestMm = cordBetweenContacts.at(geometry, raise, {});
    if (rearAt(geometry, raise, spanCord) >= longestMm)
      return { text: `the cord ${betweenText(worstSpan(geometry, raise, spanCord))}`, cords: "back" };
    if (boardSpanMm(geometry) >= longestMm)
      return { text: "the cord between two eyes on the board", cords: "board" };
    if (railSpanMm(geometry) >= longestMm)
      return { text: "the top rail’s cord between two eyes on the board", cords: "rail" };
    return loopSideMm(geometry) >= longestMm
      ? { text: "the side of the loop between its wheel and its device", cords: "loop" }
      : LEAD;
  },
};

/** Longest way around a loop: cord and cloth between two guides, joined cords, an operating loop. */
export const loopPerimeter: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: noLoop,
  states: loopStates,
  at: (geometry, raise) =>
    Math.max(2 * leadMm(geometry), frontLoopMm(geometry, raise), rearAt(geometry, raise, spanLoop)),
  pulledAt: (geometry, raise, ask) =>
    Math.max(
      2 * leadMm(geometry),
      stretchedMm(geometry, frontLoopMm(geometry, raise), ask.pullN ?? CHILD_PULL.value),
      rearAt(geometry, raise, pulledLoop, ask),
    ),
  feeds,
  leansOn: leansOnHeld,
  what: (geometry, raise) => {
    const frontMm = frontLoopMm(geometry, raise);
    const behindMm = rearAt(geometry, raise, spanLoop);
    if (2 * leadMm(geometry) > Math.max(frontMm, behindMm)) return LEAD_LOOP;
    return frontMm >= behindMm
      ? frontLoop(geometry, raise)
      : {
          text: `the loop of cord and cloth ${betweenText(worstSpan(geometry, raise, spanLoop))}`,
          cords: "back",
        };
  },
  working: (geometry, raise) => {
    const behindMm = rearAt(geometry, raise, spanLoop);
    if (Math.max(2 * leadMm(geometry), frontLoopMm(geometry, raise)) >= behindMm) return undefined;
    const span = worstSpan(geometry, raise, spanLoop);
    if (span === undefined) return undefined;
    return CORD_AND_CLOTH.figure({ g: spanCordMm(span, raise * geometry.travelMm), c: span.clothMm });
  },
};

/** Guides of the rear cords, the one at the board included. */
export const rearGuideSpacing: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: noRear,
  states: gatherStates,
  leansOn: leansOnGuide,
  at: (geometry, raise) => rearAt(geometry, raise, spanCord),
  what: (geometry, raise) => ({
    text: `the distance ${betweenText(worstSpan(geometry, raise, spanCord))}`,
    cords: "back",
  }),
};

/** Half of the way around the longest loop of guided cord at a height or lower. */
export const guidedLoopLength: Sweep = {
  kind: "sweep",
  worse: "high",
  absent: (geometry) => (isHeld(geometry.loop) || hasLead(geometry) ? undefined : noRear(geometry)),
  needsFloor: ({ rear, loop }) => rear !== undefined || isHeld(loop),
  // Guides only rise out of the height that counts, so that the last to count are those that did lowered.
  states: gatherStates,
  at: (geometry, raise, ask) =>
    Math.max(leadBelowMm(geometry, ask), rearAt(geometry, raise, spanLoop, ask) / 2),
  pulledAt: (geometry, raise, ask) =>
    Math.max(leadBelowMm(geometry, ask), rearAt(geometry, raise, pulledLoop, ask) / 2),
  feeds,
  leansOn: (geometry, ask) =>
    leansOnBoth(
      leansOnHolder(geometry, ask) ?? leansOnGuideBelow(geometry, ask),
      leansOnClipsBelow(geometry, ask),
    ),
  what: (geometry, raise, ask) =>
    leadBelowMm(geometry, ask) > rearAt(geometry, raise, spanLoop, ask) / 2
      ? LEAD_LOOP
      : { text: "the loop of guided cord", cords: "back" },
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
  leansOn: leansOnHeld,
  what: (geometry, raise, ask) =>
    looseLoopAt(geometry, raise, ask) > loopPerimeter.at(geometry, raise, ask) / 2
      ? looseLoop(geometry, raise)
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
  const cordMm = spanCordMm(span, liftMm);
  const drawn = rear === undefined ? 0 : drawnMm(rear, span, pullN, liftMm, travelMm);
  return stretchedMm(geometry, cordMm, pullN) + drawn;
}

function pulledLoop(geometry: CordGeometry, span: RearSpan, liftMm: number, pullN: number): number {
  return pulledCord(geometry, span, liftMm, pullN) + span.clothMm;
}

/** Worst over the spans of one column, which is any column's; spans above the asked height do not count. */
function rearAt(geometry: CordGeometry, raise: number, of: OfSpan, ask: CheckedAgainst = {}): number {
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

/** Of a window whose height is not known every guide counts. */
function tooHigh(
  { topAboveFloorMm = 0 }: CordGeometry,
  span: RearSpan,
  liftMm: number,
  { belowFloorMm = Number.POSITIVE_INFINITY }: CheckedAgainst,
): boolean {
  return topAboveFloorMm - lowerGuideMm(span, liftMm) > belowFloorMm + SAME_LENGTH_MM;
}

function boardSpanMm({ rear }: CordGeometry): number {
  let most = 0;
  for (const spanMm of rear?.boardSpansMm ?? []) most = Math.max(most, spanMm);
  return most;
}

function railSpanMm({ railSpansMm = [] }: CordGeometry): number {
  return Math.max(0, ...railSpansMm);
}

function pulledBoardSpanMm(geometry: CordGeometry, raise: number, { pullN }: CheckedAgainst): number {
  const { rear, travelMm } = geometry;
  const spanMm = boardSpanMm(geometry);
  if (rear === undefined || spanMm === 0) return 0;
  const forceN = pullN ?? CHILD_PULL.value;
  return (
    stretchedMm(geometry, spanMm, forceN) + drawnAtBoardMm(rear, spanMm, forceN, raise * travelMm, travelMm)
  );
}

function frontLoopMm(geometry: CordGeometry, raise: number): number {
  return Math.max(joinedLoopAt(geometry, raise), geometry.loop?.perimeterMm ?? 0);
}

function frontLoop(geometry: CordGeometry, raise: number): NamedCord {
  return joinedLoopAt(geometry, raise) > (geometry.loop?.perimeterMm ?? 0)
    ? {
        text: "the loop between the lock and the connector of the cords",
        cords: longest(geometry, raise).cords,
      }
    : { text: "the operating loop", cords: "loop" };
}

/** One side of an operating loop: cord between its wheel and the device at its lower end, which both hold it. */
function loopSideMm({ loop }: CordGeometry): number {
  return loop?.dropMm ?? 0;
}

function isHeld(loop: OperatingLoop | undefined): boolean {
  return loop !== undefined && loop.device !== "none";
}

/** An operating loop on a device may hang lower than is asked, where its device holds and leaves no loop. */
function leansOnHolder(
  { loop, topAboveFloorMm }: CordGeometry,
  { belowFloorMm }: CheckedAgainst,
): LeansOn | undefined {
  if (loop === undefined || !isHeld(loop)) return undefined;
  const lowMm = (topAboveFloorMm ?? 0) - loop.exitBelowTopMm - loop.dropMm;
  if (belowFloorMm !== undefined && lowMm > belowFloorMm + SAME_LENGTH_MM) return undefined;
  return {
    why: "The loop is held by a device at its lower end. Whether that takes the pull, and leaves no loop, shows when it is tried on the wall.",
    test: "guide-pull",
  };
}

function loopStates(geometry: CordGeometry): number[] {
  return [...gatherStates(geometry), ...joinedStates(geometry)];
}

function noLoop(geometry: CordGeometry): string | undefined {
  if (hasLead(geometry)) return undefined;
  if (geometry.loop !== undefined || joinedStates(geometry).length > 0) return undefined;
  return noRear(geometry);
}

function noSpan(geometry: CordGeometry): string | undefined {
  if (geometry.loop !== undefined || hasLead(geometry) || railSpanMm(geometry) > 0) return undefined;
  return noRear(geometry);
}

function noRear({ rear }: CordGeometry): string | undefined {
  return rear === undefined ? NO_REAR : undefined;
}

/** A lock holds a rail’s cords from one side only, as it holds those that raise the shade. */
function feeds({ rear, travelMm, railSpansMm = [] }: CordGeometry, { pullN }: CheckedAgainst): boolean {
  if (railSpansMm.length > 0) return true;
  return rear !== undefined && canFeed(rear, pullN ?? CHILD_PULL.value, travelMm);
}

function betweenText(span: RearSpan | undefined): string {
  return span?.top === true ? "between the top ring and the board" : "between two rings";
}
