import { describe, expect, it } from "vitest";
import { RULE_OUTCOMES, type RuleOutcome } from "../../shade-plan/index.ts";
import { againstText, reviewLine, stampText } from "./review-words.ts";

const counts = (given: Partial<Record<RuleOutcome, number>>): Record<RuleOutcome, number> => ({
  ...{ failed: 0, "not-proven": 0, "not-shown-to-fail": 0, "does-not-apply": 0 },
  ...given,
});
const SOLD = { place: "ca", purpose: "for-sale" } as const;
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("the answer of a review", () => {
  it("counts what failed and says what to do, for others and at one’s own window", () => {
    const stands = "what would answer each stands beside its finding.";
    expect(reviewLine(SOLD, counts({ failed: 2, "not-proven": 3 }))).toBe(
      `As it is planned this shade fails 2 rules on cords. Change it before it is sold, given or hung: ${stands}`,
    );
    expect(reviewLine({ place: "ca", purpose: "own-home" }, counts({ failed: 1 }))).toBe(
      `As it is planned this shade fails a rule on cords. Change it, or do not hang it where children live or visit: ${stands}`,
    );
    for (const unsaid of [{ place: "ca" }, { purpose: "for-sale" }, {}] as const)
      expect(reviewLine(unsaid, counts({ failed: 1 }))).toContain("or do not hang it where children");
  });

  it("asks for the tests of what is open, and without any says no more than that none is shown to fail", () => {
    const test = "do the tests of the review before it is used.";
    const none = "No rule that was read is shown to fail";
    expect(reviewLine(SOLD, counts({ "not-proven": 1 }))).toBe(
      `${none}, and one rule is not proven: ${test}`,
    );
    expect(reviewLine(SOLD, counts({ "not-proven": 4 }))).toBe(
      `${none}, and 4 rules are not proven: ${test}`,
    );
    expect(reviewLine(SOLD, counts({ "not-shown-to-fail": 5 }))).toBe(`${none}.`);
  });
});

describe("what a shade was read against", () => {
  const heaviest = { words: "No cord hangs." };
  const against = (
    made: Parameters<typeof againstText>[0],
    profile: Parameters<typeof againstText>[1]["profile"],
    given: Partial<Record<RuleOutcome, number>>,
    first: typeof heaviest | undefined = heaviest,
  ) => plain(againstText(made, { profile }, counts(given), first));

  it("is its place’s rules, our own profile beside them, or that alone", () => {
    const one = { failed: 1 };
    expect(against(SOLD, "place", one)).toBe(
      "Read against the rules of Canada, for sale: 1 rule failed. The heaviest: No cord hangs.",
    );
    expect(against({ place: "us", purpose: "own-home" }, "place-and-caution", one)).toContain(
      "the rules of the United States, for your own home and our own caution profile: 1 rule failed.",
    );
    const own = "our own caution profile, which is no place’s law: 1 rule failed.";
    for (const made of [{ place: "ca" }, { purpose: "gift" }, {}] as const)
      expect(against(made, "place", one)).toContain(own);
    expect(against(SOLD, "caution", one)).toContain(own);
  });

  it("tells every outcome that there is, gravest first, and the heaviest only of what failed or is open", () => {
    expect(RULE_OUTCOMES[0]).toBe("failed");
    const all = { failed: 2, "not-proven": 1, "not-shown-to-fail": 3, "does-not-apply": 1 };
    expect(against(SOLD, "place", all)).toContain(
      ": 2 rules failed, 1 not proven, 3 not shown to fail, 1 does not apply. The heaviest: ",
    );
    expect(against(SOLD, "place", { "not-proven": 1 })).toContain(
      ": 1 not proven. The heaviest: No cord hangs.",
    );
    expect(against(SOLD, "place", { "not-shown-to-fail": 3 })).toMatch(/: 3 not shown to fail\.$/);
    expect(plain(againstText(SOLD, { profile: "place" }, counts({ failed: 1 }), undefined))).toMatch(
      /: 1 rule failed\.$/,
    );
  });
});

it("a stamp counts the rules that stop it, of the place where it was said", () => {
  const not = "Do not sell, give away or install this shade as it is planned: its cords fail";
  expect(stampText(SOLD, 1)).toBe(`${not} a rule of Canada.`);
  expect(stampText({ place: "us" }, 3)).toBe(`${not} 3 rules of the United States.`);
  expect(stampText({}, 2)).toBe(`${not} 2 rules.`);
});
