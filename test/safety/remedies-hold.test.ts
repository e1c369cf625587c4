import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LIFT_KINDS, PLACES, PURPOSES, REAR_GUIDES, STYLES } from "../../src/job/index.ts";
import { patched, plan, proveRemedies } from "../../src/plan/index.ts";
import { RULE_OUTCOME_NAMES, type SafetyReview } from "../../src/shade-plan/index.ts";
import { jobWith } from "../job-with.ts";

const anyCase = fc.record({
  style: fc.constantFrom(...STYLES),
  kind: fc.constantFrom(...LIFT_KINDS),
  rearCords: fc.constantFrom(...REAR_GUIDES),
  place: fc.constantFrom(...PLACES, undefined),
  purpose: fc.constantFrom(...PURPOSES, undefined),
  sillMm: fc.constantFrom(undefined, 300, 900, 1800),
  heightMm: fc.constantFrom(700, 1500, 2400),
  topDropMm: fc.constantFrom(0, 0, 400),
});

function jobOf({ style, kind, rearCords, place, purpose, sillMm, heightMm, topDropMm }: Case) {
  return jobWith(
    {
      opening: {
        widthsMm: [900],
        heightsMm: [heightMm],
        ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
      },
      shade: { style, mount: "to-size", making: { lift: { kind, rearCords }, fold: { topDropMm } } },
    },
    { place, purpose },
  );
}
type Case = typeof anyCase extends fc.Arbitrary<infer T> ? T : never;

const failedIn = ({ results }: SafetyReview) =>
  results.flatMap(({ outcome, ruleId }) => (outcome === "failed" ? [ruleId] : []));

describe("a way out of a rule on cords", () => {
  it("comes to what it says once the job is planned with it, whatever the style, the lift and the place", () => {
    let tried = 0;
    fc.assert(
      fc.property(anyCase, (one) => {
        const job = jobOf(one);
        const [shade] = proveRemedies(job, plan(job)).shades;
        if (shade === undefined) throw new Error("invalid job: empty");
        const before = failedIn(shade.safety);
        for (const { id, remedies } of shade.findings.filter(({ stage }) => stage === "safety")) {
          for (const { label, changes = "", patch } of remedies) {
            const said = /This rule: (.+)\.$/.exec(changes)?.[1];
            if (said === undefined) continue;
            tried++;
            const after = plan(patched(job, patch)).shades[0]?.safety;
            const result = after?.results.find(({ ruleId }) => `safety.${ruleId.toLowerCase()}` === id);
            expect(result && RULE_OUTCOME_NAMES[result.outcome], `${id}: ${label}`).toBe(said);
            expect(result?.outcome, label).not.toBe("failed");
            expect(before, label).toEqual(expect.arrayContaining(after === undefined ? [] : failedIn(after)));
          }
        }
      }),
      { numRuns: 60 },
    );
    expect(tried).toBeGreaterThan(30);
  });
});
