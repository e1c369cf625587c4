import { describe, expect, it } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { figureId } from "../../figures/index.ts";
import type { Cord } from "../../job/index.ts";
import type { CleatCord, Form, Grid, Mass } from "../../shade-plan/index.ts";
import { heldWeight } from "../cord-loads.ts";
import { carriedAt, gatherings, heldAt, weightSteps } from "./gatherings.ts";
import { levelMm } from "./level.ts";
import { overEyes } from "./over-eyes.ts";
import { planCleatCourse } from "./plan-course.ts";

/** 1,000 mm of shade: rows 700 and 400 mm below the top line, a headrail of 100 mm, 80 mm more cloth in the upper fold. */
const GRID = {
  rows: [
    { number: 1, yMm: 700, fromHemMm: 300 },
    { number: 2, yMm: 400, fromHemMm: 600 },
  ],
  bottomSectionMm: 300,
  headrailMm: 100,
  topSectionMm: 400,
  travelMm: 600,
  columns: [],
} as unknown as Grid;
const FORM = {
  stretches: [
    { row: 0, clothMm: 320, cordMm: 300 },
    { row: 1, clothMm: 300, cordMm: 300 },
    { row: 2, clothMm: 480, cordMm: 400 },
  ],
} as unknown as Form;
const mass = (...parts: [part: string, massKg: number][]): Mass => ({
  parts: parts.map(([part, massKg]) => ({ part, label: part, massKg })) as Mass["parts"],
  ...{ totalKg: 0, clothGsm: 0, onBoardKg: 0 },
});

describe("cloth as the cords gather it", () => {
  it("from the bottom up: what is gathered, along the cord, of cloth, and below it", () => {
    expect(gatherings(GRID, FORM)).toEqual([
      { startsMm: 0, gathersMm: 300, cordMm: 300, clothMm: 300, belowMm: 320 },
      // Above the top row 300 mm are left of the travel, with its 80 mm of slack.
      { startsMm: 300, gathersMm: 300, cordMm: 300, clothMm: 380, belowMm: 620 },
    ]);
    const unsaid = { stretches: [] } as unknown as Form;
    expect(gatherings(GRID, unsaid).map(({ clothMm, belowMm }) => [clothMm, belowMm])).toEqual([
      [300, 300],
      [300, 600],
    ]);
  });

  it("of a travel that ends in a fold gathers that fold in part and none above it", () => {
    const short = gatherings({ ...GRID, travelMm: 120 }, FORM);
    expect(short.map(({ startsMm, gathersMm, cordMm }) => [startsMm, gathersMm, cordMm])).toEqual([
      [0, 120, 300],
      [120, 0, 0],
    ]);
    expect(weightSteps(short)).toHaveLength(2);
  });

  it("hangs on the cords with half of what its fold has closed", () => {
    const list = gatherings(GRID, FORM);
    const carried = (liftMm: number) => carriedAt(list, FORM, liftMm);
    // All cloth is 320 + 300 + 480 mm.
    expect(carried(0)).toEqual({ rows: 1, hangsMm: 320, lengthMm: 1100 });
    expect(carried(100)).toEqual({ rows: 1, hangsMm: 320 + 50, lengthMm: 1100 });
    expect(carried(300)).toEqual({ rows: 2, hangsMm: 620 + 40, lengthMm: 1100 });
    expect(carried(450)).toEqual({ rows: 2, hangsMm: 620 + (380 - 150) / 2, lengthMm: 1100 });
    expect(carried(600)).toEqual({ rows: 2, hangsMm: 620 + 190, lengthMm: 1100 });
    expect(carriedAt(list, { stretches: [] } as unknown as Form, 100)).toEqual({
      ...{ rows: 0, hangsMm: 0, lengthMm: 1 },
    });
  });

  it("weighs on them by its share, with bar and rows", () => {
    const weight = heldAt(gatherings(GRID, FORM), FORM, mass(["bar", 0.5], ["face", 1.1], ["rings", 0.2]));
    expectNear(weight(0), 9.80665 * (0.5 + 0.1 + 0.32), 1e-9);
    expectNear(weight(600), 9.80665 * (0.5 + 0.2 + 0.81), 1e-9);
  });

  it("raised, hangs but for the headrail and half of the fold below it, its slack taken along", () => {
    // The fold is 300 mm of cord and 80 of slack: 100 + 190 of 1,100 mm stay up.
    const held = heldWeight(GRID, FORM, mass(["bar", 0.5], ["face", 1.1]));
    expectNear(held.value, 9.80665 * (0.5 + 1.1 * (1 - 290 / 1100)), 1e-9);
    const flat = { stretches: [{ row: 2, clothMm: 380, cordMm: 400 }] } as unknown as Form;
    expectNear(heldWeight(GRID, flat, mass(["face", 1])).value, 9.80665 * (1 - 250 / 380), 1e-9);
  });
});

describe("pull and hold over eyes", () => {
  it("grow with the weight: up by friction, held by as much less", () => {
    // 6 and 4 N that are pulled by 9 and 8 N hold with 36/9 + 16/8 = 6 N.
    const at = overEyes(
      [
        { loadN: 6, pullN: 9 },
        { loadN: 4, pullN: 8 },
      ],
      10,
      17,
    );
    expect(at(10)).toEqual({ pullN: 17, holdN: 6 });
    expect(at(5)).toEqual({ pullN: 8.5, holdN: 3 });
  });

  it("are nothing where nothing hangs", () => {
    expect(overEyes([{ loadN: 0, pullN: 0 }], 0, 0)(10)).toEqual({ pullN: 0, holdN: 0 });
    expect(overEyes([], 0, 5)(10)).toEqual({ pullN: 0, holdN: 0 });
  });

  it("over a last eye are made up of the weight, each cord’s own eyes and the turn about", () => {
    // Over a fixed eye of friction 0.25 a quarter turn costs e^(0.25·π/2) = 1.481 (Morton & Hearle, eq. 25.2).
    const cords = [
      { number: 1, loadN: 6, pullN: 12, eyesRad: Math.PI / 2, riseMm: 700, runMm: 0 },
      { number: 2, loadN: 4, pullN: 7, eyesRad: 0, riseMm: 700, runMm: 0 },
    ] as unknown as CleatCord[];
    const input = {
      shade: { eye: { id: "eye", name: "Eye", outsideDiameterMm: 12, friction: 0.25 }, cord: {} },
      ...{ grid: GRID, form: FORM, mass: mass(["bar", 1]) },
    };
    const { shares } = planCleatCourse(input as never, { cords, heldN: 10, pullN: 19 }).values;
    const costs = 6 * (Math.exp((0.25 * Math.PI) / 2) - 1);
    expect(shares.map(({ what, eye }) => [what, eye])).toEqual([
      ["weight", undefined],
      ["own-eye", 1],
      ["last-eye", undefined],
    ]);
    expectNear(shares[0]?.addsN ?? 0, 10, 1e-12);
    expectNear(shares[1]?.addsN ?? 0, costs, 1e-9);
    expectNear(shares[2]?.addsN ?? 0, 19 - 10 - costs, 1e-9);
  });
});

describe("a hem out of level by the stretch of its cords", () => {
  const cords = [
    { number: 1, loadN: 6, riseMm: 1000, runMm: 500 },
    { number: 2, loadN: 4, riseMm: 1000, runMm: 100 },
  ] as unknown as CleatCord[];
  const heights = [
    { liftMm: 0, raise: 0, heldN: 10, pullN: 0, holdN: 0 },
    { liftMm: 600, raise: 1, heldN: 20, pullN: 0, holdN: 0 },
  ];
  const level = (cord: Partial<Cord>, some = cords) => levelMm(cord as Cord, some, heights);

  it("is that of the two that stretch most and least, at the worse height: (12·900 − 8·500) / E there", () => {
    // 2 % under 10 N: E = 500 N. Lowered (6·1500 − 4·1100) / 500 = 9.2 mm, raised 6,800 / 500 = 13.6 mm.
    const found = level({ stretchAt10N: 0.02, breakingN: 7 });
    expectNear(found.values ?? 0, 13.6, 1e-9);
    expect(found.workings.map(figureId)).toEqual(["lift.cord-stiffness", "lift.level"]);
  });

  it("is reckoned from its strength where the stretch was not measured: 12 % as it breaks", () => {
    expectNear(level({ breakingN: 60 }).values ?? 0, 6800 / 500, 1e-9);
  });

  it("is none of a cord that does not stretch, and unknown of one of which nothing is known", () => {
    expect(level({ stretchAt10N: 1e-7 })).toEqual({ values: 0, workings: [] });
    expect(level({ stretchAt10N: 1e-6 }).workings).toHaveLength(2);
    expect(level({})).toEqual({ values: undefined, workings: [] });
    expect(level({ breakingN: 60 }, cords.slice(0, 1)).values).toBeUndefined();
    const slack = cords.map((cord) => ({ ...cord, loadN: 0 }));
    expect(level({ breakingN: 60 }, slack).values).toBeUndefined();
  });
});
