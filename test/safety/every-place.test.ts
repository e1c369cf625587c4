import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  GOODS,
  LIFT_KINDS,
  type LiftKind,
  PLACES,
  type Place,
  PURPOSES,
  type Purpose,
  REAR_GUIDES,
  STYLES,
} from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { hangingCords } from "../../src/shade-plan/index.ts";
import { jobWith } from "../job-with.ts";

/** What is drawn for each row of the table; the rows themselves are every place, purpose and lift. */
const rest = fc.record({
  style: fc.constantFrom(...STYLES),
  rearCords: fc.constantFrom(...REAR_GUIDES),
  goods: fc.constantFrom(...GOODS, undefined),
  heightMm: fc.constantFrom(500, 1500, 2600),
  sillMm: fc.constantFrom(undefined, 0, 900, 2000),
  footholdMm: fc.constantFrom(undefined, 0, 450),
  topDropMm: fc.constantFrom(0, 0, 300),
});
type Rest = typeof rest extends fc.Arbitrary<infer T> ? T : never;

const rows = [undefined, ...PLACES].flatMap((place) =>
  [undefined, ...PURPOSES].flatMap((purpose) => LIFT_KINDS.map((kind) => [place, purpose, kind] as const)),
);
/** One draw for each row, always the same. */
const drawn = fc.sample(rest, { seed: 20260401, numRuns: rows.length });

function shadeOf(place: Place | undefined, purpose: Purpose | undefined, kind: LiftKind, one: Rest) {
  const { style, rearCords, goods, heightMm, sillMm, footholdMm, topDropMm } = one;
  const [shade] = plan(
    jobWith(
      {
        opening: {
          widthsMm: [900],
          heightsMm: [heightMm],
          ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
          ...(footholdMm === undefined ? {} : { footholdMm }),
        },
        shade: { style, mount: "to-size", making: { lift: { kind, rearCords }, fold: { topDropMm } } },
      },
      { place, purpose, goods },
    ),
  ).shades;
  if (shade === undefined) throw new Error("invalid job: empty");
  return shade;
}

describe("every place, purpose and lift, with a style, a height and guides drawn for each", () => {
  const shades = rows.map(([place, purpose, kind], i) => {
    const one = drawn[i];
    if (one === undefined) throw new Error("invalid draw: too few");
    return { name: JSON.stringify([place, purpose, kind, one]), shade: shadeOf(place, purpose, kind, one) };
  });

  it("a cord that can be reached never goes with a review in which nothing is failed or open", () => {
    for (const { name, shade } of shades) {
      const { safety, lift, findings } = shade;
      const reachable = lift.cords.length + hangingCords(lift).length + (lift.kind === "tube-loop" ? 1 : 0);
      if (reachable === 0) continue;
      expect(safety.counts.failed + safety.counts["not-proven"], name).toBeGreaterThan(0);
      expect(
        findings.some(({ stage, severity }) => stage === "safety" && severity !== "note"),
        name,
      ).toBe(true);
    }
  });

  it("what hangs at the front is never passed over by all of the rules on cords that hang", () => {
    for (const { name, shade } of shades) {
      if (hangingCords(shade.lift).length === 0) continue;
      const { results } = shade.safety;
      const cordless = results.find(({ ruleId }) => ruleId === "GEN-CORDLESS");
      expect(cordless?.outcome, name).toBe("failed");
    }
  });

  it("“not shown to fail” names the figure that shows it, and “not proven” why, and what would", () => {
    for (const { name, shade } of shades) {
      for (const { ruleId, outcome, value, valueText, why } of shade.safety.results) {
        expect(why.length, `${name} ${ruleId}`).toBeGreaterThan(10);
        if (outcome === "not-shown-to-fail") {
          expect([value, valueText], `${name} ${ruleId}`).not.toContain(undefined);
        }
      }
    }
  });

  it("every rule that fails has its finding, and a stop its stamp", () => {
    for (const { name, shade } of shades) {
      const { results, stamp, stampText } = shade.safety;
      const found = new Map(shade.findings.map(({ id, severity }) => [id, severity]));
      const failed = results.filter(({ outcome }) => outcome === "failed");
      for (const { ruleId } of failed) expect(found.has(`safety.${ruleId.toLowerCase()}`), name).toBe(true);
      const stops = failed.some(({ ruleId }) => found.get(`safety.${ruleId.toLowerCase()}`) === "stop");
      expect([stamp, stampText !== undefined], name).toEqual([stops, stops]);
    }
  });
});
