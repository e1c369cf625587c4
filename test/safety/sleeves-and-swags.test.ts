import { describe, expect, it } from "vitest";
import { type LiftKind, PLACES, PURPOSES, type RearGuide, type StyleKind } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

function shadeOf(
  { style = "flat", kind, rearCords }: { style?: StyleKind; kind?: LiftKind; rearCords?: RearGuide },
  at: Pick<Parameters<typeof jobWith>[1] & object, "place" | "purpose">,
) {
  const lift = {
    ...(kind === undefined ? {} : { kind }),
    ...(rearCords === undefined ? {} : { rearCords }),
  };
  const job = jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 800 },
      shade: { style, mount: "to-size", making: { lift } },
    },
    at,
  );
  const { workshop: _habits, ...bare } = job;
  const [shade] = plan(kind === undefined ? bare : job).shades;
  if (shade === undefined) throw new Error("invalid job: empty");
  return shade;
}

describe("what rests on workmanship is not proven", () => {
  it.each(
    [undefined, ...PLACES].flatMap((place) =>
      [undefined, ...PURPOSES].map((purpose) => [place, purpose] as const),
    ),
  )(
    "%s, %s: the lift that is proposed leaves something open, with a test of its cords to do",
    (place, purpose) => {
      const { safety, findings, lift } = shadeOf(
        {},
        { ...(place && { place }), ...(purpose && { purpose }) },
      );
      expect(lift.cords.length).toBeGreaterThan(0);
      const cordTests = ["pull-rear-cords", "pull-enclosure", "reach-and-loop"];
      expect(safety.tests.some(({ id }) => cordTests.includes(id))).toBe(true);
      expect(findings.map(({ id }) => id)).toContain("safety.not-proven");
    },
  );

  it.each(["ring-locked", "enclosed"] as const)("%s: no rule on rear cords is said to hold", (rearCords) => {
    for (const kind of ["spring", "motor", "tube-wand"] as const) {
      for (const place of PLACES) {
        const { safety } = shadeOf({ kind, rearCords }, { place, purpose: "for-sale" });
        const behind = safety.results.filter(({ ruleId }) =>
          /SPAN|LOOP$|GUIDE|REAR|INNER|CORDLESS|EXPOSED/.test(ruleId),
        );
        for (const { outcome, ruleId, test } of behind) {
          if (/AU-LOOP|US-LOOP|LOWLOOP/.test(ruleId) || outcome === "does-not-apply") continue;
          expect(outcome === "failed" || (outcome === "not-proven" && test !== undefined), ruleId).toBe(true);
        }
      }
    }
  });
});

describe("loops of cord and cloth count the cloth that hangs", () => {
  it.each(["austrian", "hobbled", "gathered-balloon", "festoon"] as const)("%s", (style) => {
    const shade = shadeOf({ style, kind: "spring", rearCords: "open" }, { place: "ca", purpose: "for-sale" });
    const loop = shade.safety.results.find(({ ruleId }) => ruleId === "CA-LOOP")?.value ?? 0;
    // The longest of the plan's own stretches between two rows, cord and cloth together, by hand.
    const between = shade.form.stretches.filter(({ row }) => row > 0 && row < shade.grid.rows.length);
    const around = between.map(
      ({ cordMm, clothMm, sewnMm = 0 }) => cordMm + Math.max(cordMm, clothMm - sewnMm),
    );
    expect(loop).toBeGreaterThanOrEqual(Math.max(...around) - 1e-6);
  });

  it("a plain shade still has as much cloth as cord", () => {
    const shade = shadeOf({ kind: "spring", rearCords: "open" }, { place: "ca", purpose: "for-sale" });
    const loop = shade.safety.results.find(({ ruleId }) => ruleId === "CA-LOOP")?.value ?? 0;
    const span = shade.safety.results.find(({ ruleId }) => ruleId === "CA-SPAN")?.value ?? 0;
    expectNear(loop, 2 * span, 1e-6);
  });
});

it("the side of a loop on a tensioner is a cord between two points that hold it, sleeves behind or not", () => {
  const { safety, lift } = shadeOf(
    { kind: "tube-loop", rearCords: "enclosed" },
    { place: "ca", purpose: "for-sale" },
  );
  if (lift.kind !== "tube-loop") throw new Error("invalid lift");
  const span = safety.results.find(({ ruleId }) => ruleId === "CA-SPAN");
  expect(span).toMatchObject({ outcome: "failed", value: lift.loopDropMm });
});
