import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { plan, type ShadePlan } from "../plan/index.ts";

const shadeOf = (making: object, rest: object = {}, job: object = {}): ShadePlan => {
  const [shade] = plan(
    jobWith(
      {
        opening: { widthsMm: [1200], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: { mount: "outside", making, ...rest },
      },
      { units: { system: "metric", ruler: "1 mm" }, ...job },
    ),
  ).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
};

describe("a top that comes down", () => {
  test("by hand: run to the far end, drop, tail and knots", () => {
    const { lift, size, grid } = shadeOf({ fold: { topDropMm: 400 }, lift: { tailMm: 700, knotsMm: 100 } });
    const rail = lift.topRail;
    expect(rail?.side).toBe("left");
    for (const { xMm, lengthMm } of rail?.cords ?? []) expectNear(lengthMm, xMm + 400 + 700 + 100, 1e-9);
    expect(rail?.tailUpMm).toBe(1100);
    // A bay of at most 900 mm: two bays on a shade as wide as this, and both middle columns where none is in the middle.
    expect(size.finishedWidthMm).toBeGreaterThan(1000);
    expect(grid.columns).toHaveLength(6);
    expect(rail?.cords.map(({ column }) => column)).toEqual([1, 3, 4, 6]);
  });

  test("it is bought: eyes, lock, rail, and its cord with the rest", () => {
    const lines = (making: object) => shadeOf(making).cost.shopping;
    const ids = lines({ fold: { topDropMm: 400 } }).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(["rail-eyes", "rail-lock", "top-rail"]));
    const cord = (making: object) => lines(making).find(({ id }) => id === "cord-cord-1-4")?.quantity ?? 0;
    expect(cord({ fold: { topDropMm: 400 } })).toBeGreaterThan(cord({}));
  });

  test("cord between board and rail counts in the review, even where the cloth encloses its own", () => {
    const careful = { lift: { kind: "motor", rearCords: "enclosed" } };
    const job = { place: "ca", purpose: "for-sale" };
    const without = shadeOf(careful, {}, job).safety;
    const withRail = shadeOf({ ...careful, fold: { topDropMm: 400 } }, {}, job).safety;
    expect(without.counts.failed).toBe(0);
    expect(withRail.counts.failed).toBeGreaterThan(0);
    expect(withRail.stamp).toBe(true);
  });

  test("the further it comes down, the more cord is bare: no rule that failed is mended by it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 500 }), (drop, more) => {
        const failed = (topDropMm: number) =>
          shadeOf({ fold: { topDropMm } }, {}, { place: "ca", purpose: "gift" }).safety.counts.failed;
        expect(failed(drop + more)).toBeGreaterThanOrEqual(failed(drop));
      }),
      { numRuns: 15 },
    );
  });

  test.each(["austrian", "hobbled", "relaxed"])("not for a %s shade, with the reason", (style) => {
    const shade = shadeOf({ fold: { topDropMm: 300 } }, { style });
    expect(shade.lift.topRail).toBeUndefined();
    expect(shade.findings.map(({ id }) => id)).toContain("rig.top-not-for-style");
  });

  test("its steps say what to cut and tie", () => {
    const { steps, lift } = shadeOf({ fold: { topDropMm: 300 } });
    const tie = steps.find(({ id }) => id === "string-rail-cords");
    expect(tie?.text).toContain(`${lift.topRail?.cords[0]?.cutMm}`);
    expect(shadeOf({}).steps.map(({ id }) => id)).not.toContain("string-rail-cords");
  });
});
