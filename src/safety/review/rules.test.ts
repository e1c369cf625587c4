import { describe, expect, it } from "vitest";
import { RULE_FIXTURES } from "../../../test/safety/rule-fixtures.ts";
import { PLACES } from "../../job/index.ts";
import { GENERAL_RULES } from "../rules/general.ts";
import { PLACE_RULES } from "../rules/place-rules.ts";
import { isActive, type Rule } from "../rules/rule.ts";
import { evaluate } from "./evaluate.ts";
import { QUANTITY_TABLE } from "./quantities/table.ts";

const rules = new Map<string, Rule>(
  [...PLACES.flatMap((place) => [...PLACE_RULES[place].rules]), ...GENERAL_RULES].map((rule) => [
    rule.id,
    rule,
  ]),
);
const active = [...rules.values()].filter(isActive);
const TAG = { signalMm: 5, textMm: 2.5 };

describe.each(active.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
  const cases = Object.entries(RULE_FIXTURES[id] ?? {});

  it("has cases on each side of its limit", () => {
    expect(cases.length).toBeGreaterThan(0);
    const measured = QUANTITY_TABLE[rule.check.quantity].kind === "sweep" && rule.check.limit !== undefined;
    if (measured)
      expect(cases.map(([name]) => name)).toEqual(expect.arrayContaining(["below", "at", "above"]));
  });

  it.each(cases)("%s", (_, { geometry, outcome, raise, goods, tag = TAG }) => {
    const found = evaluate(
      rule,
      { geometry, tag },
      { purpose: "for-sale", ...(goods && { goods }) },
      "outside",
    );
    expect(found.outcome).toBe(outcome);
    if (raise !== undefined) expect(found.measurement?.raise).toBe(raise);
    if (outcome === "does-not-apply") expect(found.why).not.toBe("");
  });
});

describe("binding", () => {
  it("a rule that does not bind a purpose says why and measures nothing", () => {
    const rule = active.find(({ id }) => id === "US-NOHANG");
    const geometry = RULE_FIXTURES["US-NOHANG"]?.above?.geometry;
    if (rule === undefined || geometry === undefined) throw new Error("invalid fixture: US-NOHANG");
    expect(evaluate(rule, { geometry, tag: TAG }, { purpose: "for-sale" }, "outside").outcome).toBe("failed");
    expect(evaluate(rule, { geometry, tag: TAG }, { purpose: "own-home" }, "outside")).toEqual({
      outcome: "does-not-apply",
      why: "outside",
    });
  });

  it("a rule for stock goods, or for goods made to order, says so of the other", () => {
    const geometry = RULE_FIXTURES["US-NOHANG"]?.above?.geometry;
    if (geometry === undefined) throw new Error("invalid fixture: US-NOHANG");
    for (const [id, goods, says] of [
      ["US-STOCK-8", "custom", "Written for stock goods, and these are made to order."],
      ["US-NOHANG", "stock", "Written for goods made to order, and these are made for stock."],
    ] as const) {
      const rule = active.find((one) => one.id === id);
      if (rule === undefined) throw new Error(`invalid rule: ${id}`);
      const found = evaluate(rule, { geometry, tag: TAG }, { purpose: "for-sale", goods }, "");
      expect([found.outcome, found.why]).toEqual(["does-not-apply", says]);
    }
  });

  it("fixtures name only rules that are active", () => {
    const ids = new Set(active.map(({ id }) => id));
    expect(Object.keys(RULE_FIXTURES).filter((id) => !ids.has(id))).toEqual([]);
  });
});
