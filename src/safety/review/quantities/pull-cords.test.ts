import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { bare, fromTo, pulls } from "../../../../test/safety/cords.ts";
import { workingOf } from "../../../figures/index.ts";
import type { CordGeometry, OperatingLoop } from "../cord-geometry.ts";
import {
  cordCount,
  cordLowPoint,
  freeCordLength,
  frontLowPointMm,
  hangingAt,
  hangingLength,
  joinedCordLength,
  joinedCordLoop,
  joinedLoopAt,
  joinedStates,
  longest,
  looseLoopAt,
  looseLoopLength,
  lowestName,
  operatingCordLength,
  pullCordLowPoint,
  pullStates,
  stretchedMm,
} from "./pull-cords.ts";

// Sums and differences of the lengths that are given: no source is needed but the drawing of the window. Four cords come
// out of a lock 40 mm below the top line and hang 400 mm lowered, 1,600 mm raised; two of a top rail hang 700 mm from 60.
const LOCK = pulls(fromTo(400, 1600), { count: 4, exitBelowTopMm: 40, joinedMm: fromTo(300, 900) });
const RAIL = pulls(700, { count: 2, exitBelowTopMm: 60, raises: "top-rail", joinedMm: fromTo(350, 350) });
const loop = (device: OperatingLoop["device"], dropMm = 1000): OperatingLoop => ({
  ...{ device, dropMm, exitBelowTopMm: 50 },
  perimeterMm: 2 * dropMm,
});
const both = (more: Partial<CordGeometry> = {}) =>
  bare({ topAboveFloorMm: 2000, pulls: [LOCK, RAIL], ...more });
const one = bare({ topAboveFloorMm: 2000, pulls: [pulls(500, { count: 1, exitBelowTopMm: 40 })] });
const none = bare({ topAboveFloorMm: 2000, pulls: [] });

describe("cords with a free end", () => {
  test("the longest, lowered the rail’s and raised the lock’s", () => {
    expect([0, 0.25, 0.5, 1].map((raise) => hangingAt(both(), raise))).toEqual([700, 700, 1000, 1600]);
    expect(freeCordLength.at(both(), 0.5, {})).toBe(1000);
    expect(longest(both(), 0)).toEqual({ text: "the cords of the top rail below their lock", cords: "rail" });
    expect(longest(both(), 1)).toEqual({ text: "the cords below their lock", cords: "front" });
    expect(longest(one, 0)).toEqual({ text: "the cord below its lock", cords: "front" });
    const eye = (count: number) => bare({ pulls: [pulls(500, { count, from: "last eye" })] });
    expect(longest(eye(1), 0).text).toBe("the cord below the last eye");
    expect(longest(eye(2), 0).text).toBe("the cords below the last eye");
  });

  test("a pull makes it longer by its stretch", () => {
    expectNear(stretchedMm(both({ stretchPerN: 0.001 }), 400, 50), 420, 1e-9);
    expect(stretchedMm(both({ stretchPerN: 0.001 }), 400)).toBe(400);
    expectNear(freeCordLength.pulledAt?.(both({ stretchPerN: 0.002 }), 1, { pullN: 50 }) ?? 0, 1760, 1e-9);
    expectNear(joinedCordLength.pulledAt?.(both({ stretchPerN: 0.002 }), 1, { pullN: 50 }) ?? 0, 3520, 1e-9);
  });

  test("two end to end are the two longest, whichever lock each comes out of", () => {
    expect([0, 0.25, 1].map((raise) => joinedCordLength.at(both(), raise, {}))).toEqual([1400, 1400, 3200]);
    const single = bare({ pulls: [pulls(500, { count: 1 }), pulls(300, { count: 1 })] });
    expect(joinedCordLength.at(single, 0, {})).toBe(800);
    const figure = joinedCordLength.working?.(single, 0, {});
    if (figure === undefined) throw new Error("invalid test: no working");
    expect(workingOf(figure)).toMatchObject({
      id: "safety.joined-cord-length",
      value: 800,
      formula: "a + b",
    });
    const around = joinedCordLoop.working?.(single, 0, {});
    if (around === undefined) throw new Error("invalid test: no working");
    expect(workingOf(around)).toMatchObject({ id: "safety.joined-cord-loop", value: 800 });
    expect(joinedCordLength.what(both(), 0, {}).cords).toBe("rail");
    expect(joinedCordLoop.what(both(), 1, {}).cords).toBe("front");
  });

  test("where there is none, or one alone, it says why", () => {
    expect(freeCordLength.absent(none)).toMatch(/free end/);
    expect(freeCordLength.absent(one)).toBeUndefined();
    expect(joinedCordLength.absent(none)).toMatch(/free end/);
    expect(joinedCordLength.absent(one)).toMatch(/^Only one/);
    expect(joinedCordLength.absent(both())).toBeUndefined();
    expect(cordCount(both().pulls)).toBe(6);
  });

  test("joined cords make a loop twice as long as down to their connector", () => {
    expect([0, 1].map((raise) => joinedLoopAt(both(), raise))).toEqual([700, 1800]);
    expect(joinedLoopAt(one, 0)).toBe(0);
    expect(joinedStates(one)).toEqual([]);
    expect(new Set(joinedStates(both()))).toEqual(new Set([0, 1]));
  });

  test("the states are the ends and every knot of each course; without cords the lowered shade alone", () => {
    const bent = bare({ pulls: [pulls({ raise: [0, 0.3, 1], mm: [100, 900, 200] }), RAIL] });
    expect(new Set(pullStates(bent))).toEqual(new Set([0, 0.3, 1]));
    expect(pullStates(none)).toEqual([0]);
  });
});

describe("what reaches lowest", () => {
  test("the exit counts with the length: 2,000 − 60 − 700 lowered, 2,000 − 40 − 1,600 raised", () => {
    expect(frontLowPointMm(both(), 0)).toBe(1240);
    expect(frontLowPointMm(both(), 1)).toBe(360);
    expect(pullCordLowPoint.at(both(), 1, {})).toBe(360);
    expect(lowestName(both(), 0)).toEqual({ text: "the lower end of the cords", cords: "rail" });
    expect(lowestName(both(), 1)).toEqual({ text: "the lower end of the cords", cords: "front" });
  });

  test("what lies on the floor is at 0 and not below", () => {
    expect(frontLowPointMm(both({ topAboveFloorMm: 1500 }), 1)).toBe(0);
  });

  test("a loop that hangs lower than the cords is named, and its end is 2,000 − 50 − 1,000 above the floor", () => {
    const looped = both({ loop: loop("tensioner") });
    expect(frontLowPointMm(looped, 0)).toBe(950);
    expect(lowestName(looped, 0)).toEqual({ text: "the lower end of the loop", cords: "loop" });
    expect(lowestName(looped, 1).cords).toBe("front");
    const figure = pullCordLowPoint.working?.(looped, 0, {});
    if (figure === undefined) throw new Error("invalid test: no working");
    const { inputs, value } = workingOf(figure);
    expect(value).toBe(950);
    expect(inputs.map((input) => input.value)).toEqual([2000, 50, 1000]);
  });

  test("a loop that breaks away counts among all cords, and not among those that stay closed", () => {
    const broken = bare({ topAboveFloorMm: 2000, pulls: [], loop: loop("breakaway") });
    expect(pullCordLowPoint.absent(broken)).toMatch(/breaks away/);
    expect(hangingLength.absent(broken)).toMatch(/breaks away/);
    expect(operatingCordLength.absent(broken)).toBeUndefined();
    expect(cordLowPoint.absent(broken)).toBeUndefined();
    expect(cordLowPoint.at(broken, 0, {})).toBe(950);
    const beside = both({ loop: loop("breakaway", 1900) });
    expect(pullCordLowPoint.at(beside, 0, {})).toBe(1240);
    expect(cordLowPoint.at(beside, 0, {})).toBe(50);
    expect(hangingLength.at(beside, 0, {})).toBe(700);
    expect(operatingCordLength.at(beside, 0, {})).toBe(1900);
    expect(operatingCordLength.at(beside, 1, {})).toBe(1900);
    expect(operatingCordLength.what(beside, 1, {}).cords).toBe("loop");
    expect(hangingLength.what(beside, 1, {}).cords).toBe("front");
    for (const sweep of [pullCordLowPoint, hangingLength, operatingCordLength])
      expect(sweep.absent(none)).toMatch(/^No pull cord or loop/);
  });

  test("a motor’s lead that hangs lower than all else is what counts", () => {
    const lead = { kind: "motor" as const, leadLooseMm: 300, leadLowMm: 200 };
    expect(cordLowPoint.at(both(lead), 1, {})).toBe(200);
    expect(cordLowPoint.working?.(both(lead), 1, {})).toBeUndefined();
    expect(cordLowPoint.at(both({ ...lead, leadLowMm: 500 }), 1, {})).toBe(360);
    expect(cordLowPoint.at({ ...none, ...lead, leadLowMm: -5 }, 0, {})).toBe(0);
    expect(cordLowPoint.what(both({ ...lead, leadLowMm: 500 }), 1, {}).cords).toBe("front");
  });
});

describe("a loop that loose cords can form", () => {
  test("two or more side by side make one as long as they hang, one alone half of that", () => {
    expect(looseLoopAt(both(), 1, {})).toBe(1600);
    expect(looseLoopAt(one, 0, {})).toBe(250);
    expect(looseLoopLength.absent(none)).toMatch(/No loose cord/);
    expect(looseLoopLength.absent(one)).toBeUndefined();
  });

  test("a closed loop without a device counts as long as it hangs, with a tensioner not at all", () => {
    expect(looseLoopAt({ ...none, loop: loop("none") }, 0, {})).toBe(1000);
    expect(looseLoopAt({ ...none, loop: loop("tensioner") }, 0, {})).toBe(0);
    expect(looseLoopLength.absent({ ...none, loop: loop("tensioner") })).toMatch(/No loose cord/);
    expect(looseLoopLength.absent({ ...none, loop: loop("none") })).toBeUndefined();
    expect(looseLoopLength.what({ ...none, loop: loop("none") }, 0, {}).cords).toBe("loop");
    expect(looseLoopLength.what(both(), 0, {}).cords).toBe("rail");
  });

  test("cords that end above the height of the rule do not count; one that ends at it does", () => {
    // Raised, the lock’s end at 360 mm and the rail’s at 1,240 mm above the floor.
    expect(looseLoopAt(both(), 1, { belowFloorMm: 359 })).toBe(0);
    expect(looseLoopAt(both(), 1, { belowFloorMm: 360 })).toBe(1600);
    expect(looseLoopAt(both(), 0, { belowFloorMm: 1239 })).toBe(0);
    expect(looseLoopAt(both(), 0, { belowFloorMm: 1240 })).toBe(700);
    expect(looseLoopAt({ ...none, loop: loop("none") }, 0, { belowFloorMm: 949 })).toBe(0);
    expect(looseLoopAt({ ...none, loop: loop("none") }, 0, { belowFloorMm: 950 })).toBe(1000);
  });
});
