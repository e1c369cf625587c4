import type { Goods, Purpose } from "../../job/index.ts";
import type { RuleOutcome } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";
import type { Check, Comparison, Rule } from "../rules/rule.ts";
import { unmetCondition } from "./conditions.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { type Measurement, measureCheck, pulledMm } from "./measures.ts";
import type { Situation } from "./quantities/quantity.ts";

export interface Evaluation {
  outcome: RuleOutcome;
  /** Why the rule does not apply. */
  why?: string;
  measurement?: Measurement;
  limit?: number;
  /** What the numbers were read on, where that is not the shade as it hangs above its floor. */
  geometry?: CordGeometry;
}

/** For whom and for what a shade is made, as the job says it. */
export interface MadeFor {
  purpose?: Purpose;
  goods?: Goods;
}

const STOCK_ONLY = "Written for stock goods, and these are made to order.";
const CUSTOM_ONLY = "Written for goods made to order, and these are made for stock.";
const GOODS_UNKNOWN =
  "Whether these shades are made to order or for stock was not said. If they are made for stock, this rule speaks of them and fails.";

/** Holds one rule against one shade. `outside` says why the place’s rules leave a purpose out. */
export function evaluate(
  rule: Rule & { check: Check },
  situation: Situation,
  { purpose, goods }: MadeFor,
  outside: string,
): Evaluation {
  if (purpose !== undefined && !rule.binds.includes(purpose)) return notApplying(outside);
  if (goods !== undefined && rule.goods !== "any" && rule.goods !== goods) {
    return notApplying(rule.goods === "stock" ? STOCK_ONLY : CUSTOM_ONLY);
  }
  const found = fromFoothold(rule.check, situation, evaluateCheck(rule.check, situation));
  if (goods !== undefined || rule.goods !== "stock" || found.outcome !== "failed") return found;
  return open(found, GOODS_UNKNOWN);
}

/** What may stand at a window where nobody said whether anything does. */
const UNSAID_FOOTHOLD = sourced(750, "mm", cite("our-choice", "as high as a table"));

function fromText({ footholdMm, footholdName }: CordGeometry): string {
  return footholdMm === undefined
    ? `Whether anything stands at the window for a child to climb on was not said. Measured from a table there.`
    : `Measured from the ${footholdName ?? "highest thing that a child can stand on"} at the window, and not from the floor.`;
}

const SETTLED: readonly RuleOutcome[] = ["failed", "not-proven"];

/**
 * A height that does from the floor, and not from what a child can stand on, is not shown to do; nor does a rule pass
 * a shade by that speaks of it from there. Where nobody said what stands there, something may.
 */
function fromFoothold(check: Check, situation: Situation, fromFloor: Evaluation): Evaluation {
  const { geometry } = situation;
  const { footholdMm = UNSAID_FOOTHOLD.value, topAboveFloorMm, leadLowMm } = geometry;
  if (SETTLED.includes(fromFloor.outcome)) return fromFloor;
  const pulls = geometry.pulls.map((pull) => ({
    ...pull,
    cleatAboveFloorMm: pull.cleatAboveFloorMm - footholdMm,
  }));
  const risen = {
    ...geometry,
    ...(topAboveFloorMm !== undefined && { topAboveFloorMm: topAboveFloorMm - footholdMm }),
    ...(leadLowMm !== undefined && { leadLowMm: leadLowMm - footholdMm }),
    pulls,
  };
  const found = evaluateCheck(check, { ...situation, geometry: risen });
  return SETTLED.includes(found.outcome)
    ? { ...open(found, fromText(geometry)), geometry: risen }
    : fromFloor;
}

/** The same numbers, which convict only if something holds that nobody has said. */
function open({ measurement, ...found }: Evaluation, why: string): Evaluation {
  return { ...found, outcome: "not-proven", ...(measurement && { measurement: { ...measurement, why } }) };
}

const RELEASES =
  "Over the limit, but each cord ends in a part that comes apart: the rule then leans on that, and at what load it does shows when it is tried.";

/** What the numbers alone say, whomever the rule binds. */
export function evaluateCheck(check: Check, situation: Situation): Evaluation {
  const measurement = measureCheck(situation, check);
  if ("absent" in measurement) return notApplying(measurement.absent);
  const { geometry } = situation;
  const unmet = unmetCondition(check.when, geometry);
  if (unmet !== undefined) return notApplying(unmet);
  const limit =
    typeof check.limit === "object"
      ? check.limit.blindHeightShare * geometry.blindHeightMm + check.limit.plusMm
      : check.limit;
  const found: Evaluation = {
    outcome: judge(check, measurement, limit, situation),
    measurement,
    ...(limit === undefined ? {} : { limit }),
  };
  return found.outcome === "failed" && check.orElse === "rear-release" && geometry.rear?.releases === true
    ? { ...open(found, RELEASES), measurement: { ...measurement, why: RELEASES, test: "rear-release" } }
    : found;
}

function notApplying(why: string): Evaluation {
  return { outcome: "does-not-apply", why };
}

function judge(
  check: Check,
  measurement: Measurement,
  limit: number | undefined,
  situation: Situation,
): RuleOutcome {
  const { value, over, within } = measurement;
  if (value === undefined || limit === undefined) return "not-proven";
  if (violates(value, check.comparison, limit)) return over;
  if (within === "not-proven") return within;
  const pulled = pulledMm(situation, check, measurement);
  return pulled !== undefined && violates(pulled, check.comparison, limit) ? "not-proven" : within;
}

/** At the limit itself `at most` and `at least` hold, `below` does not; a hair of arithmetic decides nothing. */
export function violates(value: number, comparison: Comparison, limit: number): boolean {
  switch (comparison) {
    case "at-most":
      return value > limit + SAME_LENGTH_MM;
    case "at-least":
      return value < limit - SAME_LENGTH_MM;
    case "below":
      return value > limit - SAME_LENGTH_MM;
    case "equals":
      return value !== limit;
  }
}
