import { describe, expect, it } from "vitest";
import { backed, bare, looped, rears } from "../../../../test/safety/cords.ts";
import { cordBetweenContacts, guidedLoopLength } from "./rear-cords.ts";
import { courseStates, gatherStates } from "./states.ts";

describe("heights of the shade at which a cord can be longest", () => {
  it("are both ends of the travel and each at which a fold begins to gather", () => {
    expect(gatherStates(backed([100, 150, 150]))).toEqual([0, 1, 100 / 400, 250 / 400]);
    const rear = rears([100, 150, 150]);
    const last = rear.spans.at(-1);
    if (last === undefined) throw new Error("invalid test: no span");
    last.gathersMm = 50;
    // The last fold has gathered all that it will 100 mm before the end of a travel of 400 mm.
    expect(gatherStates(bare({ rear, travelMm: 400 }))).toEqual([0, 1, 100 / 400, 250 / 400, 300 / 400]);
  });

  it("are both ends alone where nothing gathers or nothing moves", () => {
    expect(gatherStates(bare())).toEqual([0, 1]);
    expect(gatherStates(bare({ rear: rears([100, 150]), travelMm: 0 }))).toEqual([0, 1]);
  });

  it("are the knots of a course inside its ends", () => {
    expect(courseStates({ raise: [0, 0.4, 1], mm: [1, 3, 2] })).toEqual([0, 1, 0.4]);
  });
});

describe("cords that a pull reaches", () => {
  const pulled = (boardSpansMm: number[], guide: "ring-locked" | "open") =>
    cordBetweenContacts.pulledAt?.(backed([150, 200], { boardSpansMm, guide }), 0, { pullN: 35 });

  it("along the board only where any run there: all of the travel of 350 mm comes out beside 100 mm between two eyes", () => {
    expect(pulled([], "ring-locked")).toBe(200);
    expect(pulled([100], "ring-locked")).toBe(450);
    expect(pulled([], "open")).toBe(550);
    expect(cordBetweenContacts.pulledAt?.(looped(700), 0, { pullN: 35 })).toBe(700);
  });

  // The loop ends 2400 − 50 − 600 = 1750 mm above the floor.
  it.each([
    [1749, undefined],
    [1750, "guide-pull"],
    [undefined, "guide-pull"],
  ] as const)("a device at 1750 mm is pulled at where %s mm and lower counts", (belowFloorMm, test) => {
    const ask = belowFloorMm === undefined ? {} : { belowFloorMm };
    expect(guidedLoopLength.leansOn?.(looped(600), ask)?.test).toBe(test);
    expect(guidedLoopLength.leansOn?.(looped(600, "none"), ask)).toBeUndefined();
  });
});
