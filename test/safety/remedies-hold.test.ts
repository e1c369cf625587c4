import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Remedy } from "../../src/figures/index.ts";
import {
  LIFT_KINDS,
  type LiftKind,
  PLACES,
  type Place,
  PURPOSES,
  REAR_GUIDES,
  STYLES,
  type StyleKind,
} from "../../src/job/index.ts";
import { isWithinFields, patched, plan, RemedyTrial } from "../../src/plan/index.ts";
import { RULE_OUTCOME_NAMES, type SafetyReview } from "../../src/shade-plan/index.ts";
import { jobWith } from "../job-with.ts";

/** Every style with every lift and every place; what else a way out may hang on is drawn, always the same. */
const rows = STYLES.flatMap((style) =>
  LIFT_KINDS.flatMap((kind) => [undefined, ...PLACES].map((place) => ({ style, kind, place }))),
);
const rest = fc.record({
  rearCords: fc.constantFrom(...REAR_GUIDES),
  purpose: fc.constantFrom(...PURPOSES, undefined),
  sillMm: fc.constantFrom(undefined, 300, 900, 1800),
  heightMm: fc.constantFrom(700, 1500, 2400),
  topDropMm: fc.constantFrom(0, 0, 400),
  pick: fc.nat(),
});
type Rest = typeof rest extends fc.Arbitrary<infer T> ? T : never;
const drawn = fc.sample(rest, { seed: 20260402, numRuns: rows.length });

interface Row {
  style: StyleKind;
  kind: LiftKind;
  place: Place | undefined;
}

function jobOf({ style, kind, place }: Row, { rearCords, purpose, sillMm, heightMm, topDropMm }: Rest) {
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

const failedIn = ({ results }: SafetyReview) =>
  results.flatMap(({ outcome, ruleId }) => (outcome === "failed" ? [ruleId] : []));

describe.each(STYLES)("a way out of a rule on cords, %s", (style) => {
  it("comes to what it says once the job is planned with it, for every lift and place", () => {
    let tried = 0;
    for (const [i, row] of rows.entries()) {
      const one = drawn[i];
      if (row.style !== style || one === undefined) continue;
      const job = jobOf(row, one);
      const [shade] = plan(job).shades;
      if (shade === undefined) throw new Error("invalid job: empty");
      const trial = new RemedyTrial(job);
      const found = shade.findings.filter(({ stage }) => stage === "safety");
      const all = found.flatMap((finding) => finding.remedies.map((remedy) => ({ finding, remedy })));
      // One that is drawn of all that are proposed, or the next that is offered.
      const from = one.pick % Math.max(1, all.length);
      let id: string | undefined;
      let remedy: Remedy | undefined;
      for (const { finding, remedy: proposed } of [...all.slice(from), ...all.slice(0, from)]) {
        id = finding.id;
        remedy = isWithinFields(proposed) ? trial.proven(finding, proposed) : undefined;
        if (remedy !== undefined) break;
      }
      if (id === undefined || remedy === undefined) continue;
      tried++;
      const after = plan(patched(job, remedy.patch)).shades[0];
      if (after === undefined) throw new Error("invalid remedy: it takes the shade away");
      const said = `${JSON.stringify(row)} ${id}: ${remedy.label}`;
      const result = after.safety.results.find(({ ruleId }) => `safety.${ruleId.toLowerCase()}` === id);
      const rule = /This rule: (.+)\.$/.exec(remedy.changes ?? "")?.[1];
      expect(rule, said).toBe(result && RULE_OUTCOME_NAMES[result.outcome]);
      const open = /Of these, (\d+) would stay open\.$/.exec(remedy.changes ?? "")?.[1];
      if (id === "safety.not-proven") {
        expect(Number(open), said).toBe(after.safety.counts["not-proven"]);
        expect(Number(open), said).toBeLessThan(shade.safety.counts["not-proven"]);
      } else if (result === undefined) {
        expect(
          after.findings.some((finding) => finding.id === id),
          said,
        ).toBe(false);
      }
      expect(result?.outcome, said).not.toBe("failed");
      expect(failedIn(shade.safety), said).toEqual(expect.arrayContaining(failedIn(after.safety)));
    }
    expect(tried).toBeGreaterThan(30);
  });
});
