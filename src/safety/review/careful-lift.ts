import type { Job, LiftKind, Place, Purpose, RearGuide } from "../../job/index.ts";
import type { Cite } from "../../sources/index.ts";
import { type ActiveRule, rulesFor } from "../rules/rules-for.ts";
import { tagHeights } from "../tag/tag-heights.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { fromTo } from "./course.ts";
import { evaluate } from "./evaluate.ts";
import { ruleWords } from "./texts.ts";

/** What is proposed for a new shade before anything else is chosen. */
export interface CarefulLift {
  kind: LiftKind;
  rearCords: RearGuide;
  why: string;
  /** The rule for which the proposal is what it is. */
  cite: Cite;
}

type AnswersFor = Pick<Job, "place" | "purpose" | "units">;

/**
 * The careful first proposal: nothing hangs at the front, and the cords at the back are in a sewn sleeve. It is the same
 * everywhere, since wherever it is read some rule fails a cord that hangs free; which one is told. The maker may choose
 * otherwise.
 * @throws where no rule fails such a cord: then there is another proposal to be thought of
 */
export function carefulLift(job: AnswersFor): CarefulLift {
  const key = `${job.place} ${job.purpose} ${job.units.ruler}`;
  const known = CHOSEN.get(key);
  if (known !== undefined) return known;
  const chosen = proposeCarefully(job);
  CHOSEN.set(key, chosen);
  return chosen;
}

/** Place, purpose and ruler give the same each time, and every plan asks. */
const CHOSEN = new Map<string, CarefulLift>();

function proposeCarefully({ place, purpose, units }: AnswersFor): CarefulLift {
  const against = strictest(failing(place, purpose));
  if (against === undefined) throw new Error(`invalid rules of ${place}: no cord that hangs free fails them`);
  return {
    kind: "spring",
    rearCords: "enclosed",
    why: `A cord that hangs free would fail: ${ruleWords(against, units)} So a lift without one is proposed first, with the cords at the back in a sewn sleeve. A cord lock stays yours to choose, with its review.`,
    cite: against.cite,
  };
}

function failing(place: Place | undefined, purpose: Purpose | undefined): ActiveRule[] {
  const situation = { geometry: HANGING, tag: tagHeights(place) };
  return rulesFor(place, purpose).active.flatMap(({ rule, outside }) => {
    const { outcome } = evaluate(rule, situation, { ...(purpose && { purpose }) }, outside);
    return outcome === "failed" ? [rule] : [];
  });
}

/** A law that was read comes before a standard, and that before advice. */
function strictest(rules: readonly ActiveRule[]): ActiveRule | undefined {
  return (["rule", "standard", "advice"] as const)
    .map((kind) => rules.find((rule) => rule.kind === kind))
    .find((rule) => rule !== undefined);
}

const TRAVEL_MM = 1270;

/**
 * The cords of a lock on a usual window: 1.5 m high with its top 2.4 m above the floor and nothing to stand on, four
 * columns, the cleat at its default, and a tail no longer than a hand needs. Those up the back are the same under any lift.
 */
const HANGING: CordGeometry = {
  kind: "cord-lock",
  blindHeightMm: 1500,
  topAboveFloorMm: 2400,
  footholdMm: 0,
  hemBelowTopMm: 1500,
  travelMm: TRAVEL_MM,
  stretchPerN: 0.001,
  pulls: [
    {
      raises: "shade",
      from: "lock",
      count: 4,
      lengthMm: fromTo(150, 150 + TRAVEL_MM),
      joinedMm: fromTo(75, 75 + TRAVEL_MM),
      exitBelowTopMm: 45,
      cleatAboveFloorMm: 1600,
    },
  ],
};
