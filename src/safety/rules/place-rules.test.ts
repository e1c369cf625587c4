import { describe, expect, it } from "vitest";
import { SOURCE_LINES } from "../../../test/safety/source-lines.ts";
import { verdictIn } from "../../../test/words.ts";
import { PLACES, PURPOSES } from "../../job/index.ts";
import { GENERAL_RULES } from "./general.ts";
import { PLACE_RULES } from "./place-rules.ts";
import { isActive, QUANTITIES, type Rule } from "./rule.ts";
import { placeRulesSchema, ruleSchema } from "./rule-schema.ts";
import { rulesFor } from "./rules-for.ts";

const all: Rule[] = [...PLACES.flatMap((place) => [...PLACE_RULES[place].rules]), ...GENERAL_RULES];
const each = [...new Map(all.map((rule) => [rule.id, rule])).values()];

/** Lengths of a line in mm, other figures as they stand: `22 cm` gives 22 and 220, `2/3` two thirds. */
function figuresIn(text: string): number[] {
  const figures: number[] = [];
  for (const [, whole, over, unit] of text.matchAll(/(\d+(?:\.\d+)?)(?:\/(\d+))?\s?(mm|cms?|m\b|in\b)?/g)) {
    const figure = Number(whole) / Number(over ?? 1);
    figures.push(figure);
    if (unit === "m") figures.push(figure * 1000);
    if (unit?.startsWith("cm")) figures.push(figure * 10);
  }
  return figures;
}

/** Every number of a rule that decides something. */
function figuresOf({ check, madeFrom }: Rule): number[] {
  if (check === undefined) return [];
  const { limit, unit, pullN, belowFloorMm, when } = check;
  const limits =
    typeof limit === "object" ? [limit.blindHeightShare, Math.abs(limit.plusMm)] : [limit ?? []].flat();
  return [
    ...(unit === "yes-no" ? [] : limits),
    ...(pullN === undefined ? [] : [pullN]),
    ...(belowFloorMm === undefined ? [] : [belowFloorMm]),
    ...(when ?? []).flatMap((condition) => ("mm" in condition ? [condition.mm] : [])),
    ...(madeFrom?.split("-").map(Number) ?? []),
  ];
}

describe("the rule files", () => {
  it.each(PLACES)("%s is well formed", (place) => {
    expect(placeRulesSchema.parse(PLACE_RULES[place])).toEqual(PLACE_RULES[place]);
    expect(PLACE_RULES[place].place).toBe(place);
  });

  it("and what holds everywhere", () => {
    for (const rule of GENERAL_RULES) expect(ruleSchema.parse(rule)).toEqual(rule);
  });

  it("a row with a limit that no comparison can be made with is refused", () => {
    const rule = PLACE_RULES.ca.rules[0];
    expect(ruleSchema.safeParse(rule).success).toBe(true);
    const check = { ...rule?.check, unit: "yes-no" };
    expect(ruleSchema.safeParse({ ...rule, check }).success).toBe(false);
    expect(ruleSchema.safeParse({ ...rule, status: "vacated" }).success).toBe(false);
  });

  it("each place names a rule once", () => {
    for (const place of PLACES) {
      const ids = PLACE_RULES[place].rules.map(({ id }) => id);
      expect(new Set(ids).size, place).toBe(ids.length);
    }
  });

  it("every quantity is asked for by some rule", () => {
    const asked = new Set(each.map(({ check }) => check?.quantity));
    expect(QUANTITIES.filter((quantity) => !asked.has(quantity))).toEqual([]);
  });

  it("no words pass a verdict", () => {
    for (const { id, words, note } of each) expect(verdictIn(`${words} ${note ?? ""}`), id).toBeUndefined();
    for (const place of PLACES) {
      const { whom, outside } = PLACE_RULES[place];
      expect(verdictIn(`${whom} ${outside}`), place).toBeUndefined();
    }
  });
});

describe("every figure is in the line that it was read from", () => {
  it.each(each.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
    const lines = SOURCE_LINES[id];
    if (lines === undefined) throw new Error(`no source line for ${id}`);
    const read = lines.flatMap(({ text }) => figuresIn(text));
    for (const figure of figuresOf(rule)) {
      expect(
        read.some((known) => Math.abs(known - figure) < 1e-9),
        `${id}: ${figure}`,
      ).toBe(true);
    }
  });

  it("figures in the words of a rule are there too", () => {
    for (const { id, words } of each) {
      const read = (SOURCE_LINES[id] ?? []).flatMap(({ text }) => figuresIn(text));
      for (const figure of figuresIn(words)) expect(read, `${id}: ${words}`).toContain(figure);
    }
  });

  it("no line is kept for a rule that is gone", () => {
    const ids = new Set(each.map(({ id }) => id));
    expect(Object.keys(SOURCE_LINES).filter((id) => !ids.has(id))).toEqual([]);
  });

  it("a figure that is not in its line is seen", () => {
    expect(figuresIn("at most 22 cm, or 2/3 H")).toEqual([22, 220, 2 / 3]);
    expect(figuresIn("at most 22 cm")).not.toContain(230);
  });
});

describe("whom the rules bind", () => {
  /** Shares of rules with numbers or counts of cords that bind each purpose: labels and papers left out. */
  const bound = (place: (typeof PLACES)[number]) =>
    Object.fromEntries(
      PURPOSES.map((purpose) => [
        purpose,
        PLACE_RULES[place].rules
          .filter((rule) => isActive(rule) && rule.binds.includes(purpose))
          .map(({ id }) => id),
      ]),
    );

  it("Canada: giving counts, and own use is not clearly exempt from the limits on cords", () => {
    const canada = bound("ca");
    expect(canada.gift).toEqual(canada["for-sale"]);
    expect(canada["public-building"]).toEqual(canada["for-sale"]);
    expect(canada["own-home"]).toEqual([
      "CA-FREE",
      "CA-SPAN",
      "CA-LOOP",
      "CA-JOIN-L",
      "CA-JOIN-P",
      "CA-HIDDEN",
      "CA-SMALL",
      "CA-NODEV",
    ]);
  });

  it.each([
    ["us", []],
    ["eu", []],
    ["gb", ["UK-LOWLOOP", "UK-TAIL"]],
    ["ni", ["UK-LOWLOOP", "UK-TAIL"]],
    ["eea", []],
    ["ie", ["IE-END"]],
    ["au", []],
  ] as const)("%s: your own window is outside all but advice", (place, advice) => {
    expect(bound(place)["own-home"]).toEqual(advice);
    expect(PLACE_RULES[place].cautionFor).toContain("own-home");
  });

  it("Australia: what is given away outside trade is outside too", () => {
    expect(bound("au").gift).toEqual([]);
    expect(PLACE_RULES.au.cautionFor).toContain("gift");
  });

  it("New Zealand: advice for everyone, the caution profile beside it", () => {
    expect(new Set(Object.values(bound("nz")).map((ids) => ids.join()))).toEqual(
      new Set(["NZ-NONE,NZ-EXPOSED"]),
    );
    expect(PLACE_RULES.nz.cautionFor).toEqual(PURPOSES);
  });

  it("the United Kingdom and Ireland carry the rows of EN 13120 and their own", () => {
    const eu = bound("eu")["for-sale"] ?? [];
    const standard = eu.filter((id) => id !== "EU-GPSR");
    expect(bound("gb")["for-sale"]).toEqual([
      ...standard,
      "UK-SECURED",
      "UK-LOWLOOP",
      "UK-TAIL",
      "UK-BUTTON",
    ]);
    expect(bound("ie")["for-sale"]).toEqual([...eu, "IE-END"]);
    expect(new Set(bound("ni")["for-sale"])).toEqual(
      new Set([...eu, "UK-SECURED", "UK-LOWLOOP", "UK-TAIL", "UK-BUTTON"]),
    );
  });

  it("Canada and Australia say what is not settled for a public building", () => {
    for (const place of ["ca", "au"] as const) {
      expect(rulesFor(place, "public-building").readAs).toContain("Not settled");
      expect(rulesFor(place, "for-sale").readAs).not.toContain("Not settled");
    }
  });
});
