import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diameterFromTurns, frictionOfPair, stretchAt10N } from "./bench-formulas.ts";
import { cordStiffnessN } from "./cord-stiffness.ts";
import { frictionOf } from "./eye-friction.ts";
import { type Job, jobSchema } from "./job.ts";
import { newJob } from "./new-job.ts";
import { notYetKnown, PART_KINDS, PART_SCHEMAS, plannedLock, withTests } from "./parts.ts";
import { locksToChoose, partsOf } from "./parts-at-hand.ts";

const jobOf = (more: object): Job =>
  jobSchema.parse({ ...newJob({ id: "j", name: "J", system: "metric" }), ...more });

describe("what the bench tests come to", () => {
  test("twenty turns 28 mm wide are cord of 1.4 mm", () => {
    expect(diameterFromTurns({ turns: 20, widthMm: 28 })).toBeCloseTo(1.4, 12);
  });

  // A litre of water weighs 9.8 N: 2 m that grow by 9.8 mm under it grow by 0.5 % under 10 N.
  test("stretch is in proportion to the pull", () => {
    expect(stretchAt10N({ lengthMm: 2000, grewMm: 9.8, pullN: 9.8 })).toBeCloseTo(0.005, 12);
    expect(cordStiffnessN({ id: "c", name: "C", diameterMm: 1, stretchAt10N: 0.005 })).toBeCloseTo(2000, 9);
  });

  // Capstan equation (Morton & Hearle, equation 25.2): e^(0.25·π/2) = 1.4809 up, and its inverse down.
  test("readings of 14.809 N and 6.7525 N over a quarter turn for 10 N are a friction of 0.25", () => {
    expect(frictionOfPair({ raisesN: 14.809, lowersN: 6.7525 })?.friction).toBeCloseTo(0.25, 4);
    expect(frictionOfPair({ raisesN: 5, lowersN: 6 })).toBeUndefined();
  });

  test("whatever readings the schema takes, what they come to is a cord, a stretch and a friction", () => {
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({ turns: fc.integer({ min: 5, max: 200 }), widthMm: mm(1, 500) }),
        fc.record({ lengthMm: mm(100, 20_000), grewMm: mm(0, 5000), pullN: mm(0.01, 5000) }),
        fc.record({ raisesN: mm(0.01, 5000), lowersN: mm(0.01, 5000) }),
        (turns, stretch, friction) => {
          const cord = PART_SCHEMAS.cords.parse({ id: "c", name: "C", tests: { turns, stretch } });
          expect(PART_SCHEMAS.cords.safeParse(withTests("cords", cord)).error).toBeUndefined();
          const eye = PART_SCHEMAS.eyes.parse({ id: "e", name: "E", tests: { friction } });
          expect(PART_SCHEMAS.eyes.safeParse(withTests("eyes", eye)).error).toBeUndefined();
        },
      ),
    );
  });

  test("a reading at the bench goes before the label", () => {
    const cord = { id: "c", name: "C", diameterMm: 1.2, tests: { turns: { turns: 20, widthMm: 30 } } };
    expect(partsOf(jobOf({ hardware: { cords: [cord] } })).cords[0]?.diameterMm).toBe(1.5);
    const gap = { id: "l", name: "L", endGapMm: 0.5, tests: { gap: { gapMm: 0.9 } } };
    expect(partsOf(jobOf({ hardware: { locks: [gap] } })).locks[0]?.endGapMm).toBe(0.9);
    const friction = { raisesN: 98, lowersN: 50 };
    const eyes = [
      { id: "e", name: "E", outsideDiameterMm: 12, friction: 0.1, tests: { friction } },
      { id: "p", name: "P", outsideDiameterMm: 16, pulleyShare: 0.95, tests: { friction } },
    ];
    // 98 and 50 over a quarter turn: 0.2142, the published worked example of `frictionFromPair`.
    for (const eye of partsOf(jobOf({ hardware: { eyes } })).eyes.slice(0, 2)) {
      expect(frictionOf(eye).value).toBeCloseTo(0.2142, 4);
    }
  });
});

describe("a part of one's own that is half filled in", () => {
  test.each(PART_KINDS)("%s: a name alone is a part, and only a lock may be planned with", (kind) => {
    const entry = PART_SCHEMAS[kind].parse({ id: "mine", name: "Mine" });
    expect(notYetKnown(kind, entry).length === 0).toBe(kind === "locks");
  });

  test("it takes nothing of an example: it is not there to choose until what is needed is known", () => {
    const parts = partsOf(jobOf({ hardware: { cords: [{ id: "mine", name: "Mine", breakingN: 300 }] } }));
    expect(parts.cords.map(({ id }) => id)).not.toContain("mine");
    expect(parts.halfKnown).toEqual([{ kind: "cords", id: "mine", name: "Mine", unknown: ["diameterMm"] }]);
  });

  test("a lock's sizes that are not known are named, and none is an example's", () => {
    const lock = plannedLock({ id: "mine", name: "Mine", housingLengthMm: 31 });
    expect(lock.unmeasured).toEqual(["housingWidthMm", "housingHeightMm", "dividerWires"]);
    expect(lock).toMatchObject({ housingLengthMm: 31 });
    expect(lock.cordsMax).toBeUndefined();
  });

  test("slots are one more than wires, however they are given; both that disagree are no count", () => {
    const sizes = { id: "l", name: "L", housingLengthMm: 30, housingWidthMm: 30, housingHeightMm: 30 };
    expect(plannedLock({ ...sizes, slots: 4 })).toMatchObject({ dividerWires: 3 });
    expect(plannedLock({ ...sizes, slots: 4, dividerWires: 3 }).unmeasured).toBeUndefined();
    expect(plannedLock({ ...sizes, slots: 5, dividerWires: 3 }).unmeasured).toEqual(["dividerWires"]);
  });

  test("who has a lock is not offered one of the catalogue to plan with", () => {
    const own = partsOf(jobOf({ hardware: { locks: [{ id: "mine", name: "Mine" }] } }));
    expect(locksToChoose(own.locks).map(({ id }) => id)).toEqual(["mine"]);
    expect(locksToChoose(partsOf(jobOf({})).locks).every(({ demo }) => demo)).toBe(true);
  });
});
