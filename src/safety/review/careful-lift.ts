import {
  frictionOf,
  type Job,
  LIFT_TRAITS,
  type LiftKind,
  type Place,
  type Purpose,
  REAR_GUIDES,
  type RearGuide,
} from "../../job/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { type ActiveRule, rulesFor } from "../rules/rules-for.ts";
import { tagHeights } from "../tag/tag-heights.ts";
import type { CordGeometry, RearSpan } from "./cord-geometry.ts";
import { fromTo } from "./course.ts";
import { evaluate } from "./evaluate.ts";
import { topOf } from "./lift-geometry.ts";

/** What is proposed for a new shade before anything else is chosen. */
export interface CarefulLift {
  kind: LiftKind;
  rearCords: RearGuide;
  why: string;
  /** The rule for which the proposal is what it is. */
  cite: Cite;
}

/**
 * The careful first proposal: a cord lock where no rule fails its hanging cords, else a lift without any; up
 * the back, whatever leaves the fewest rules failed and then the fewest open. The maker may choose otherwise.
 */
export function carefulLift({ place, purpose }: Pick<Job, "place" | "purpose">): CarefulLift {
  const key = `${place} ${purpose}`;
  const known = CHOSEN.get(key);
  if (known !== undefined) return known;
  const chosen = chooseCarefully(place, purpose);
  CHOSEN.set(key, chosen);
  return chosen;
}

/** A place and a purpose give the same each time, and every plan asks. */
const CHOSEN = new Map<string, CarefulLift>();

function chooseCarefully(place: Place | undefined, purpose: Purpose | undefined): CarefulLift {
  const hanging = failing(place, purpose, referenceShade("cord-lock", "open"));
  const without = failing(place, purpose, referenceShade("spring", "open"));
  const against = hanging.failed.filter((rule) => !without.failed.includes(rule));
  const first = strictest(against);
  const kind = first === undefined ? "cord-lock" : "spring";
  const rearCords = leastOpen(place, purpose, kind);
  if (first === undefined) {
    return {
      kind,
      rearCords,
      why: "No rule that was read here fails the cords of a lock on a usual window. The review of this shade shows what its own come to.",
      cite: cite("our-choice", "a lock where nothing that was read speaks against it"),
    };
  }
  return {
    kind,
    rearCords,
    why: `A cord that hangs free would fail: ${first.words} So a lift without one is proposed first${rearText(rearCords)}. A cord lock stays yours to choose, with its review.`,
    cite: first.cite,
  };
}

function rearText(rearCords: RearGuide): string {
  switch (rearCords) {
    case "open":
      return "";
    case "ring-locked":
      return ", with the cords at the back in a sleeve that every ring grips";
    case "enclosed":
      return ", with the cords at the back in a sewn sleeve";
  }
}

interface Failing {
  failed: ActiveRule[];
  open: number;
}

function failing(place: Place | undefined, purpose: Purpose | undefined, geometry: CordGeometry): Failing {
  const situation = { geometry, tag: tagHeights(place) };
  const found: Failing = { failed: [], open: 0 };
  for (const { rule, outside } of rulesFor(place, purpose).active) {
    const { outcome } = evaluate(rule, situation, { ...(purpose && { purpose }) }, outside);
    if (outcome === "failed") found.failed.push(rule);
    if (outcome === "not-proven") found.open++;
  }
  return found;
}

function leastOpen(place: Place | undefined, purpose: Purpose | undefined, kind: LiftKind): RearGuide {
  let best: RearGuide = "open";
  let least = Number.POSITIVE_INFINITY;
  for (const guide of REAR_GUIDES) {
    const { failed, open } = failing(place, purpose, referenceShade(kind, guide));
    const score = failed.length * 1000 + open;
    if (score < least) {
      least = score;
      best = guide;
    }
  }
  return best;
}

/** A law that was read comes before a standard, and that before advice. */
function strictest(rules: readonly ActiveRule[]): ActiveRule | undefined {
  return (["rule", "standard", "advice"] as const)
    .map((kind) => rules.find((rule) => rule.kind === kind))
    .find((rule) => rule !== undefined);
}

const ROWS = 7;
const SPAN_MM = 190;

/**
 * A usual window to try a lift on before there is a shade: 1.5 m high with its top 2.4 m above the floor and nothing to stand on, rows
 * as close as any rule asks, four columns, the cleat at its default, and a tail no longer than a hand needs.
 */
function referenceShade(kind: LiftKind, guide: RearGuide): CordGeometry {
  const spans = Array.from(
    { length: ROWS },
    (_, i): RearSpan => ({
      cordMm: SPAN_MM,
      clothMm: SPAN_MM,
      gathersMm: i === ROWS - 1 ? SPAN_MM - 60 : SPAN_MM,
      startsMm: i * SPAN_MM,
      lowerBelowTopMm: 20 + (ROWS - i) * SPAN_MM,
      top: i === ROWS - 1,
    }),
  );
  const travelMm = ROWS * SPAN_MM - 60;
  const corded = LIFT_TRAITS[kind].hangs === "tail";
  return {
    kind,
    blindHeightMm: 1500,
    topAboveFloorMm: 2400,
    footholdMm: 0,
    hemBelowTopMm: 1500,
    travelMm,
    stretchPerN: 0.001,
    pulls: corded
      ? [
          {
            raises: "shade",
            from: "lock",
            count: 4,
            lengthMm: fromTo(150, 150 + travelMm),
            joinedMm: fromTo(75, 75 + travelMm),
            exitBelowTopMm: 45,
            cleatAboveFloorMm: 1600,
          },
        ]
      : [],
    rear: {
      count: 4,
      guide,
      spans,
      endBelowTopMm: 20,
      boardSpansMm: corded ? [190, 190, 190] : [],
      heldN: spans.map((_, i) => 6 + i),
      leastShare: 0.12,
      friction: frictionOf().value,
      wrapBelowRad: 0,
      top: topOf({ kind }),
    },
  };
}
