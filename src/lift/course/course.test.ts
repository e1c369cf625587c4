import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyJob } from "../../../test/arbitrary-job.ts";
import { jobWith, resolvedWith } from "../../../test/job-with.ts";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { plannedLock, rigInput } from "../../../test/rig-inputs.ts";
import { plan } from "../../plan/index.ts";
import type { CordLockLift } from "../../shade-plan/index.ts";
import { heldWeight } from "../cord-loads.ts";
import { gatherings, heldAt } from "./gatherings.ts";

const made = (making: object = {}) =>
  rigInput(
    resolvedWith({
      opening: { widthsMm: [1100], heightsMm: [1500] },
      shade: { mount: "to-size", making },
    }),
  );

describe("weight on the cords on the way up", () => {
  // The reference folds, by two independent methods: the lower pin carries (1 − d/2a)/2 of a limp loop's weight.
  const pinned = casesOf("hanging_fold_pinned").filter(
    ([, { inputs }]) => given(inputs, "lambda=w*a^3/B") >= 30 && given(inputs, "d/(2a)") > 0,
  );
  test.each(pinned)("the share of the lower ring, %s", (_, { inputs, outputs }) => {
    const lambda = given(inputs, "lambda=w*a^3/B");
    const gap = given(inputs, "d/(2a)");
    const share = given(outputs, "upward force from bottom pin *a^2/B") / (2 * lambda);
    // Stiffness adds to it, less and less the limper the cloth is.
    expect(Math.abs(share - (1 - gap) / 2)).toBeLessThan(lambda >= 1000 ? 0.03 : 0.2);
  });

  test("fully raised it is what the closed formula gives", () => {
    const { grid, form, mass } = made();
    const list = gatherings(grid, form);
    expectNear(heldAt(list, form, mass)(grid.travelMm), heldWeight(grid, form, mass).value, 1e-9);
  });

  test("as the first fold begins, by hand: the bar, the bottom section, and no cloth of the fold", () => {
    // 1 kg of cloth on 1.5 m, bar 0.5 kg; the rings of this mass weigh nothing.
    const { grid, form, mass } = made();
    const bottomKg = grid.bottomSectionMm / 1500;
    expectNear(heldAt(gatherings(grid, form), form, mass)(0), 9.80665 * (0.5 + bottomKg), 1e-9);
  });

  test("it never grows lighter on the way up", () => {
    const { grid, form, mass } = made();
    const list = gatherings(grid, form);
    let before = 0;
    for (let lift = 0; lift <= grid.travelMm; lift += grid.travelMm / 333) {
      const held = heldAt(list, form, mass)(lift);
      expect(held).toBeGreaterThanOrEqual(before - 1e-9);
      before = held;
    }
  });
});

const lockLift = (making: object = {}, hardware: object = {}): CordLockLift => {
  const lift = plan(
    jobWith(
      { opening: { widthsMm: [1100], heightsMm: [1500] }, shade: { mount: "to-size", making } },
      { hardware },
    ),
  ).shades[0]?.lift;
  if (lift?.kind !== "cord-lock") throw new Error("invalid job: no cord lock");
  return lift;
};
const eyeOf = (friction: number) => ({
  eyes: [{ id: "own", name: "Own eye", outsideDiameterMm: 12, friction }],
});
const own = { lift: { kind: "cord-lock", eye: "own" } };

describe("pull and hold", () => {
  test("the shares add up to the pull at the hand, and the weight is the first of them", () => {
    const { course, pullN } = lockLift();
    expectNear(
      course.shares.reduce((sum, { addsN }) => sum + addsN, 0),
      pullN,
      1e-9,
    );
    expect(course.shares[0]?.what).toBe("weight");
  });

  test("a cord that only turns at its own eye costs e^(μπ/2), Morton & Hearle eq. 25.2: 1.481 at μ = 0.25", () => {
    const { course, cords } = lockLift(own, eyeOf(0.25));
    const eye = course.shares.find(({ what }) => what === "own-eye");
    const load = cords.find(({ number }) => number === eye?.eye)?.loadN ?? 0;
    expectNear((load + (eye?.addsN ?? 0)) / load, 1.48097, 1e-5);
  });

  test("more friction never eases the pull, and always helps to hold", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (μ, more) => {
          const a = lockLift(own, eyeOf(μ)).course.heights;
          const b = lockLift(own, eyeOf(μ + more)).course.heights;
          a.forEach((height, i) => {
            expect(b[i]?.pullN).toBeGreaterThanOrEqual(height.pullN - 1e-9);
            expect(b[i]?.holdN).toBeLessThanOrEqual(height.holdN + 1e-9);
          });
        },
      ),
      { numRuns: 30 },
    );
  });

  test("a pulley of share 1 leaves only roller and small turns; pulleys ease what eyes cost", () => {
    const eyes = lockLift(own, eyeOf(0.25));
    expect(eyes.course.withPulleysN).toBeLessThan(eyes.pullN);
    const pulleys = { eyes: [{ id: "own", name: "Own pulley", outsideDiameterMm: 12, pulleyShare: 1 }] };
    const free = lockLift(own, pulleys);
    // A frictionless run: only the roller of the lock asks for more, 1/0.917 (Pipeline Rules of Thumb Handbook, p. 6).
    const loads = free.cords.reduce((sum, { loadN }) => sum + loadN, 0);
    expectNear(free.pullN / loads, 1 / 0.917, 1e-9);
  });
});

describe("level", () => {
  test("by hand: two cords of equal load, one longer by the run along the board", () => {
    const cord = { id: "own", name: "Own cord", diameterMm: 1.4, stretchAt10N: 0.002 };
    const lift = lockLift(
      { columns: { count: 2 }, lift: { kind: "cord-lock", cord: "own" } },
      { cords: [cord] },
    );
    // EA = 10 N / 0.002; each cord carries half; the rise is the same, so only the runs differ.
    const runs = lift.cords.map(({ runMm }) => runMm);
    const difference = Math.max(...runs) - Math.min(...runs);
    const top = lift.course.heights.at(-1)?.heldN ?? 0;
    expectNear(lift.course.levelMm ?? 0, ((top / 2) * difference) / (10 / 0.002), 1e-6);
  });

  test("a cord that does not stretch hangs level, and a springier one never more so", () => {
    const level = (stretchAt10N: number) =>
      lockLift(
        { lift: { kind: "cord-lock", cord: "own" } },
        { cords: [{ id: "own", name: "Own cord", diameterMm: 1.4, stretchAt10N }] },
      ).course.levelMm ?? Number.NaN;
    expect(level(0)).toBe(0);
    expect(level(0.02)).toBeGreaterThan(level(0.01));
  });
});

test("any job: forces are finite, holding never takes more than the weight, raising never less", () => {
  fc.assert(
    fc.property(anyJob, (job) => {
      for (const { lift } of plan(job).shades) {
        expect(lift.course.heights.length).toBeGreaterThan(0);
        for (const { heldN, pullN, holdN, raise } of lift.course.heights) {
          expect(raise).toBeGreaterThanOrEqual(0);
          expect(raise).toBeLessThanOrEqual(1);
          for (const force of [heldN, pullN, holdN]) expect(Number.isFinite(force)).toBe(true);
          if (lift.kind !== "cord-lock") continue;
          expect(holdN).toBeLessThanOrEqual(heldN * (1 + 1e-9) + 1e-9);
          expect(pullN).toBeGreaterThanOrEqual(heldN * (1 - 1e-9) - 1e-9);
        }
      }
    }),
    { numRuns: 60 },
  );
});

test("a spring set half way is off by its band at either end, within it between", () => {
  const input = made({ lift: { kind: "cord-lock" } });
  const shade = plan(
    jobWith({
      opening: { widthsMm: [1100], heightsMm: [1500] },
      shade: { mount: "to-size", making: { lift: { kind: "spring" } } },
    }),
  ).shades[0];
  if (shade?.lift.kind !== "spring") throw new Error("invalid job: no spring");
  const { course, bandN } = shade.lift;
  const last = course.heights.at(-1);
  expect(last?.holdN ?? 0).toBeLessThanOrEqual(bandN * 1.0001);
  expect(course.shares).toEqual([]);
  expect(plannedLock(input).values.course.shares.length).toBeGreaterThan(2);
});
