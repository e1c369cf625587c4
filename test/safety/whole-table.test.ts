import { describe, expect, it } from "vitest";
import { LIFT_KINDS, type LiftKind, PLACES, PURPOSES, STYLES, type StyleKind } from "../../src/job/index.ts";
import { JobPlanner } from "../../src/plan/index.ts";
import { hangingCords } from "../../src/shade-plan/index.ts";
import { jobWith } from "../job-with.ts";

/** How high it hangs, as far as anybody said: not at all, low, and high above something to stand on. */
const HEIGHTS = {
  "not said": {},
  low: { sillAboveFloorMm: 100, footholds: [] },
  "high, above a bed": { sillAboveFloorMm: 2000, footholds: [{ kind: "bed", heightMm: 600 }] },
} as const;

function jobOf(style: StyleKind, kind: LiftKind, height: keyof typeof HEIGHTS) {
  const { footholds = [], ...opening }: { footholds?: readonly { kind: "bed"; heightMm: number }[] } =
    HEIGHTS[height];
  return jobWith({
    opening: {
      widthsMm: [900],
      heightsMm: [1500],
      ...opening,
      ...(height === "not said" ? {} : { footholds: [...footholds] }),
    },
    shade: { style, mount: "to-size", making: { lift: { kind } } },
  });
}

/** Every place, purpose, lift, style and height: what a change of place asks anew is the review alone. */
describe.each(STYLES)("%s, with every lift, at every height, in every place, for every purpose", (style) => {
  it.each(LIFT_KINDS)(
    "%s: a cord in reach is failed or open, and what is not shown to fail names its figure",
    (kind) => {
      let reviewed = 0;
      for (const height of Object.keys(HEIGHTS) as (keyof typeof HEIGHTS)[]) {
        const planner = new JobPlanner();
        const job = jobOf(style, kind, height);
        for (const place of [undefined, ...PLACES]) {
          for (const purpose of [undefined, ...PURPOSES]) {
            const { place: _place, purpose: _purpose, ...rest } = job;
            const said = `${height} ${place} ${purpose}`;
            const shade = planner.shade(
              { ...rest, ...(place && { place }), ...(purpose && { purpose }) },
              0,
              0,
            );
            if (shade === undefined) throw new Error("invalid job: empty");
            const { safety, lift, findings } = shade;
            reviewed++;
            const reach = lift.cords.length + hangingCords(lift).length + (lift.kind === "tube-loop" ? 1 : 0);
            expect(reach, said).toBeGreaterThan(0);
            // Labels and papers are open on every shade: of the cords themselves something is failed or open.
            const cordless = safety.results.find(({ ruleId }) => ruleId === "GEN-CORDLESS");
            expect(["failed", "not-proven"], said).toContain(cordless?.outcome);
            if (hangingCords(lift).length > 0 || lift.kind === "tube-loop" || lift.rearCords === "open")
              expect(cordless?.outcome, said).toBe("failed");
            expect(
              findings.some(({ stage, severity }) => stage === "safety" && severity !== "note"),
              said,
            ).toBe(true);
            for (const { ruleId, outcome, unit, value, valueText, why, test } of safety.results) {
              if (outcome === "not-shown-to-fail") {
                expect(value, `${said} ${ruleId}`).toBeTypeOf("number");
                expect(why, `${said} ${ruleId}`).toMatch(unit === "mm" ? /\d/ : /./);
                if (unit === "mm") expect(why, `${said} ${ruleId}`).toContain(valueText);
              }
              if (outcome === "not-proven")
                expect(`${why}${test ?? ""}`.length, `${said} ${ruleId}`).toBeGreaterThan(10);
            }
          }
        }
      }
      expect(reviewed).toBe(3 * (PLACES.length + 1) * (PURPOSES.length + 1));
    },
  );
});
