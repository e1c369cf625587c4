import type { Cite } from "../sources/index.ts";
import type { Caution } from "./caution.ts";

/** What a rule comes to, the heaviest first. There is no verdict for the whole. */
export const RULE_OUTCOMES = ["failed", "not-proven", "not-shown-to-fail", "does-not-apply"] as const;
export type RuleOutcome = (typeof RULE_OUTCOMES)[number];
export const RULE_OUTCOME_NAMES: Record<RuleOutcome, string> = {
  failed: "failed",
  "not-proven": "not proven",
  "not-shown-to-fail": "not shown to fail",
  "does-not-apply": "does not apply",
};

export const PHYSICAL_TESTS = [
  "motor-lead",
  "pull-rear-cords",
  "pull-enclosure",
  "reach-and-loop",
  "head-probe",
  "wind-on-cleat",
  "guide-pull",
  "breakaway-load",
  "rear-release",
  "button-cells",
  "collector-opens",
  "loop-device",
  "small-parts",
  "lead",
  "labels",
] as const;
export type PhysicalTestId = (typeof PHYSICAL_TESTS)[number];

/** A test that only hands and weights can do, in words. */
export interface PhysicalTest {
  id: PhysicalTestId;
  title: string;
  text: string;
}

/** One row of the rules that were read. */
export interface RuleSource {
  ruleId: string;
  /** The rule in plain words. */
  words: string;
  cite: Cite;
  /** Date of the text as it was read, or `undated`. */
  asOf: string;
  /** V1: legal text or official page. V2: secondary text. ours: our own rounding down. */
  confidence: "V1" | "V2" | "ours";
  kind: "rule" | "standard" | "advice";
  status: "in-force" | "voluntary-standard" | "guidance" | "vacated" | "superseded" | "unverified";
  note?: string;
}

export const CONFIDENCE_NAMES: Record<RuleSource["confidence"], string> = {
  V1: "legal text or official page",
  V2: "secondary text",
  ours: "our own rounding down",
};
export const STATUS_NAMES: Record<RuleSource["status"], string> = {
  "in-force": "in force",
  "voluntary-standard": "voluntary standard",
  guidance: "guidance",
  vacated: "vacated",
  superseded: "superseded",
  unverified: "not verified",
};

/** The cords that a result is about: results about the same ones have one cause. */
export const CORD_PLACES = ["front", "rail", "loop", "board", "back", "lead", "cleat"] as const;
export type CordPlace = (typeof CORD_PLACES)[number];

/** One rule evaluated for this shade. */
export interface RuleResult extends RuleSource {
  outcome: RuleOutcome;
  why: string;
  /** What `value` measures, in words: the cord, span or loop. */
  what?: string;
  /** The cords that it is of. */
  cords?: CordPlace;
  /** Why `value` alone proves nothing. */
  open?: string;
  /** What the shade comes to in the worst state, and the limit, in `unit`. */
  value?: number;
  limit?: number;
  unit: "mm" | "count" | "kg" | "mg/kg" | "yes-no";
  comparison: "at-most" | "below" | "at-least" | "equals";
  /** The same as a maker reads them. */
  valueText?: string;
  limitText?: string;
  /** What the worst pull makes of it by calculation, where cord can be drawn out, mm. */
  pulledMm?: number;
  /** Force of the pull, N. */
  pullN?: number;
  /** State of the shade in which it is worst. */
  worst?: WorstState;
  /** Id of the test that decides what cannot be computed. */
  test?: PhysicalTestId;
  /** Ids of tests that it asks for besides. */
  alsoTests?: readonly PhysicalTestId[];
  /** Ids of the workings behind the value. */
  figures?: string[];
}

export interface WorstState {
  /** 0 lowered, 1 raised. */
  raise: number;
  hemBelowTopMm: number;
  hemAboveFloorMm?: number;
}

/** The cords of one shade evaluated against the rules of its place and purpose. */
export interface SafetyReview {
  /** As the job says them; absent where it does not. */
  place?: string;
  purpose?: string;
  /** Whose rules were read: those of the place, our caution profile, or both. */
  profile: "place" | "caution" | "place-and-caution";
  /** The same in words, and whom they bind. */
  readAs: string;
  /** The answer and what to do first, without rules and codes. */
  line: string;
  /** Whose rules, how many of them came out how, and the heaviest. */
  against: string;
  counts: Record<RuleOutcome, number>;
  /** The heaviest first. */
  results: RuleResult[];
  /** Rules that no longer hold or are not verified: listed, never a result. */
  listed: RuleSource[];
  /** Tests that the results ask for, each once. */
  tests: PhysicalTest[];
  cautions: Caution[];
  /** A law or the standard that it points to failed for goods sold, given or hung in public: every sheet and file says so. */
  stamp: boolean;
  stampText?: string;
}

/** One line of a child-safety tag. */
export interface TagLine {
  text: string;
  language: "en" | "fr";
  kind: "signal" | "warning" | "instruction" | "maker";
  /** Least height of its letters: of capitals where it is all capitals, else of small letters, mm. */
  minHeightMm: number;
  bold: boolean;
  capitals: boolean;
  /** Words of the official text; otherwise our own. */
  official: boolean;
  /** What the maker fills in on it. */
  asks?: "model" | "made" | "maker";
}

/** What to print on a tag that stays on the shade. */
export interface ChildSafetyTag {
  lines: TagLine[];
  languages: ("en" | "fr")[];
  /** Where the heights come from. */
  heights: Cite;
  /** Stands beside the tag, not on it. */
  note: string;
}
