import { expect, it } from "vitest";
import { backed, bare, fromTo, hanging, heightless } from "../../../test/safety/cords.ts";
import type { Check } from "../rules/rule.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { measureCheck, pulledMm } from "./measures.ts";

const CHECK: Check = {
  quantity: "free-cord-length",
  comparison: "at-most",
  limit: 220,
  unit: "mm",
  states: "all",
};
const measured = (geometry: CordGeometry, check: Partial<Check> = {}) =>
  measureCheck({ geometry, tag: { signalMm: 5, textMm: 3 } }, { ...CHECK, ...check });

it("the worst of all heights, of the lowered or of the raised shade; of equals the lowest", () => {
  const cord = hanging(fromTo(300, 1500));
  expect(measured(cord)).toMatchObject({
    value: 1500,
    raise: 1,
    over: "failed",
    within: "not-shown-to-fail",
  });
  expect(measured(cord, { states: "lowered" })).toMatchObject({ value: 300, raise: 0 });
  expect(measured(cord, { states: "raised" })).toMatchObject({ value: 1500, raise: 1 });
  expect(measured(hanging(400))).toMatchObject({ value: 400, raise: 0 });
  const early = { raise: [0, 0.4, 1], mm: [100, 500, 500] };
  expect(measured(hanging(early))).toMatchObject({ value: 500, raise: 0.4 });
  expect(measured(hanging(fromTo(400, 400)))).toMatchObject({ value: 400, raise: 0 });
});

it("a cord of no length is one all the same, unless only what hangs low is asked of", () => {
  expect(measured(hanging(0))).toMatchObject({ value: 0 });
  const loose = { quantity: "loose-loop-length", belowFloorMm: 1600 } as const;
  // Its end is 2400 − 50 − 300 mm above the floor.
  expect(measured(hanging(300), loose)).toEqual({
    absent: "Nothing of the kind hangs as low as this rule asks.",
  });
  expect(measured(hanging(300), { ...loose, belowFloorMm: 2050 })).toMatchObject({ value: 150 });
  expect(measured(bare(), loose)).toEqual({ absent: "No loose cord hangs on this lift." });
});

it("nothing that asks for a height is known without the window’s, and what hangs then convicts nobody", () => {
  const low = { quantity: "pull-cord-low-point", comparison: "at-least", limit: 1500 } as const;
  const HEIGHT = "The height of the window above the floor is not known.";
  expect(measured(heightless(hanging(300)), low)).toEqual({
    ...{ raise: 0, why: HEIGHT, over: "not-proven", within: "not-proven" },
  });
  expect(measured(hanging(300), low)).toMatchObject({ value: 2050, over: "failed", why: "" });
  expect(
    measured(heightless(hanging(300)), { quantity: "loose-loop-length", belowFloorMm: 1600 }),
  ).toMatchObject({
    ...{ value: 150, why: HEIGHT, over: "not-proven" },
  });
});

it("what a pull makes of it is the longest of all heights, and nothing where no pull is looked at", () => {
  const situation = {
    geometry: { ...hanging(fromTo(300, 1500)), stretchPerN: 0.001 },
    tag: { signalMm: 5, textMm: 3 },
  };
  const free = { ...CHECK, pullN: 35 };
  const found = measureCheck(situation, free);
  if ("absent" in found) throw new Error("invalid test: no cord");
  expect(pulledMm(situation, free, found)).toBeCloseTo(1500 * 1.035, 9);
  expect(pulledMm(situation, { ...free, states: "lowered" }, found)).toBeCloseTo(300 * 1.035, 9);
  const ends = { ...CHECK, quantity: "pull-cord-low-point" } as const;
  const end = measureCheck(situation, ends);
  if ("absent" in end) throw new Error("invalid test: no cord");
  expect(pulledMm(situation, ends, end)).toBeUndefined();
});

it("rear cords that slide, or lean on a sleeve, prove nothing", () => {
  const between = { quantity: "cord-between-contacts" } as const;
  expect(measured(backed([200]), between)).toMatchObject({ value: 200, feeds: true, within: "not-proven" });
  expect(measured(backed([200], { heldN: [400] }), between)).toMatchObject({
    ...{ value: 200, feeds: false, within: "not-shown-to-fail" },
  });
  const motor = backed([200], { guide: "ring-locked" }, { kind: "motor", leadLooseMm: 100, leadLowMm: 900 });
  expect(measured(motor, between)).toMatchObject({
    ...{ value: 200, within: "not-proven", test: "pull-enclosure", alsoTests: ["motor-lead"] },
  });
  expect(measured(backed([200], { guide: "ring-locked" }), between)).not.toHaveProperty("alsoTests");
  expect(measured(backed([200], { guide: "enclosed" }), between)).toMatchObject({
    ...{ raise: 0, over: "not-proven", within: "not-proven", test: "pull-enclosure" },
  });
});
