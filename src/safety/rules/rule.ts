import type { Place, Purpose } from "../../job/index.ts";
import type { PhysicalTestId } from "../../shade-plan/index.ts";
import type { Cite } from "../../sources/index.ts";

/** What can be asked of a shade's cords. How each is computed stands in `review/quantities/`. */
export const QUANTITIES = [
  "free-cord-length",
  "joined-cord-length",
  "joined-cord-loop",
  "cord-between-contacts",
  "loop-perimeter",
  "head-opening",
  "pull-cord-low-point",
  "cord-low-point",
  "hanging-length",
  "breakaway-loop-low-point",
  "breakaway-loop-length",
  "breakaway-load",
  "operating-cord-length",
  "operating-loop-length",
  "loose-loop-length",
  "guided-loop-length",
  "any-loop-length",
  "cleat-height",
  "cord-to-wind",
  "tail-below-cleat",
  "rear-guide-spacing",
  "inner-cords-reachable",
  "free-hanging-cords",
  "cords-in-connector",
  "accessible-cords",
  "guide-keeps-cord",
  "button-cells",
  "instructions-followed",
  "hidden-cord-exposed",
  "relies-on-device",
  "loop-device-fixed",
  "collector-opens",
  "secured-by-device",
  "small-parts",
  "lead-content",
  "signal-word-height",
  "warning-text-height",
  "warnings-and-labels",
  "maker-label",
  "refers-to-law",
] as const;
export type Quantity = (typeof QUANTITIES)[number];

export const COMPARISONS = ["at-most", "below", "at-least", "equals"] as const;
export type Comparison = (typeof COMPARISONS)[number];

export const RULE_UNITS = ["mm", "count", "kg", "mg/kg", "yes-no"] as const;
export type RuleUnit = (typeof RULE_UNITS)[number];

/** States of the shade in which a quantity is looked at; `all` is every height from lowered to raised. */
export const RULE_STATES = ["all", "lowered", "raised"] as const;
export type RuleStates = (typeof RULE_STATES)[number];

/** When a rule speaks at all: a closed vocabulary, each word answered in `review/conditions.ts`. */
export type Condition =
  | { if: "installation-height-known" }
  | { if: "installation-height-unknown" }
  | { if: "blind-height-at-most"; mm: number }
  | { if: "blind-height-over"; mm: number }
  | { if: "device-with-breakaway" };

/** A limit that follows from the height of the blind: share × H + plusMm. */
export interface HeightLimit {
  blindHeightShare: number;
  plusMm: number;
}

export interface Check {
  quantity: Quantity;
  comparison: Comparison;
  /** 1 is yes and 0 is no where the unit is `yes-no`; absent where no text that was read gives it. */
  limit?: number | HeightLimit;
  unit: RuleUnit;
  /** Force of a pull in the worst direction, under which the quantity is looked at, N. */
  pullN?: number;
  states: RuleStates;
  /** Only what hangs at this height above the floor or lower counts, mm. */
  belowFloorMm?: number;
  when?: readonly Condition[];
  /** What the rule takes in the place of its limit: a part on every rear cord that comes apart. */
  orElse?: "rear-release";
  test?: PhysicalTestId;
}

export const RULE_KINDS = ["rule", "standard", "advice"] as const;
export type RuleKind = (typeof RULE_KINDS)[number];

export const RULE_STATUSES = [
  "in-force",
  "voluntary-standard",
  "guidance",
  "vacated",
  "superseded",
  "unverified",
] as const;
export type RuleStatus = (typeof RULE_STATUSES)[number];

/**
 * V1: read in the legal text or on an official page. V2: read in secondary text only.
 * `ours`: our own rounding down of such rows.
 */
export const CONFIDENCES = ["V1", "V2", "ours"] as const;
export type Confidence = (typeof CONFIDENCES)[number];

export interface Rule {
  /** `CA-FREE`: place and what it is about. */
  id: string;
  /** The rule in plain words, for a person who sews. */
  words: string;
  cite: Cite;
  /** Date of the text as it was read: `2021-05`, or `undated`. */
  asOf: string;
  confidence: Confidence;
  kind: RuleKind;
  status: RuleStatus;
  /** Written for goods made to stock, for custom-made goods, or for any. */
  goods: "any" | "custom" | "stock";
  binds: readonly Purpose[];
  /** Made on or after this date, where the rule says so. */
  madeFrom?: string;
  /** Absent where the rule is listed and not evaluated. */
  check?: Check;
  note?: string;
}

/** The rules of one place, and whom they bind. */
export interface PlaceRules {
  place: Place;
  /** Whom the rules of the place bind, in plain words. */
  whom: string;
  /** Why a rule does not bind a purpose that it leaves out. */
  outside: string;
  /** What the texts that were read leave open for a purpose. */
  unsettled?: Partial<Record<Purpose, string>>;
  /** Purposes for which the caution profile is read beside, since the place's own rules do not bind them. */
  cautionFor: readonly Purpose[];
  rules: readonly Rule[];
}

/** Rows that are not in force, or not known to be, are listed and never give a result. */
export function isActive(rule: Rule): rule is Rule & { check: Check } {
  return (
    rule.check !== undefined &&
    (rule.status === "in-force" || rule.status === "voluntary-standard" || rule.status === "guidance")
  );
}
