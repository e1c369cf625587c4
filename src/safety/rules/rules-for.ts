import type { Place, Purpose } from "../../job/index.ts";
import type { SafetyReview } from "../../shade-plan/index.ts";
import { GENERAL_RULES } from "./general.ts";
import { CAUTION_RULES, PLACE_RULES } from "./place-rules.ts";
import { placeWithArticle, purposeText } from "./place-words.ts";
import { type Check, isActive, type Rule } from "./rule.ts";

export type ActiveRule = Rule & { check: Check };

/** Rows to hold against a shade, and under whose words. */
export interface RuleSet {
  profile: SafetyReview["profile"];
  readAs: string;
  active: { rule: ActiveRule; outside: string }[];
  listed: Rule[];
}

const NOT_SAID =
  "This is our own rounding down of the rules of all places: not a legal limit, and not proven by anyone.";

/**
 * The rows of the place, and the caution profile where they do not bind or where place or purpose was not said.
 * What agencies advise everyone comes last.
 */
export function rulesFor(place: Place | undefined, purpose: Purpose | undefined): RuleSet {
  const key = `${place ?? ""} ${purpose ?? ""}`;
  let found = RULE_SETS.get(key);
  if (found === undefined) {
    found = ruleSet(place, purpose);
    RULE_SETS.set(key, found);
  }
  return found;
}

/** The rows never change, so each set is put together once. */
const RULE_SETS = new Map<string, RuleSet>();

function ruleSet(place: Place | undefined, purpose: Purpose | undefined): RuleSet {
  if (place === undefined || purpose === undefined || place === "elsewhere") {
    return {
      profile: "caution",
      readAs: cautionText(place, purpose),
      active: [...rowsOf(CAUTION_RULES.rules, CAUTION_RULES.outside), ...rowsOf(GENERAL_RULES, "")],
      listed: place === undefined ? [] : PLACE_RULES[place].rules.filter((rule) => !isActive(rule)),
    };
  }
  const own = PLACE_RULES[place];
  const withCaution = own.cautionFor.includes(purpose);
  return {
    profile: withCaution ? "place-and-caution" : "place",
    readAs: `Read: the rules of ${placeWithArticle(place)}, ${purposeText(purpose)}${withCaution ? ", and our own caution profile beside them" : ""}. ${[own.whom, own.unsettled?.[purpose]].filter((text) => text !== undefined).join(" ")}`,
    active: [
      ...rowsOf(own.rules, own.outside),
      ...(withCaution ? rowsOf(CAUTION_RULES.rules, CAUTION_RULES.outside) : []),
      ...rowsOf(GENERAL_RULES, ""),
    ],
    listed: own.rules.filter((rule) => !isActive(rule)),
  };
}

function rowsOf(rules: readonly Rule[], outside: string): RuleSet["active"] {
  return rules.filter(isActive).map((rule) => ({ rule, outside }));
}

function cautionText(place: Place | undefined, purpose: Purpose | undefined): string {
  const missing = [
    ...(place === undefined ? ["where the shade will hang"] : []),
    ...(purpose === undefined ? ["whom it is for"] : []),
  ];
  const why =
    missing.length > 0
      ? `It was not said ${missing.join(" or ")}, so no place’s rules were read.`
      : "The rules of that place were not read.";
  return `Read: our own caution profile. ${why} ${NOT_SAID}`;
}
