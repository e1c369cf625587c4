import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { expectNear } from "../../../test/near.ts";
import { workingOf } from "../../figures/index.ts";
import { plannedLock } from "../../job/index.ts";
import { topRail } from "./top-rail.ts";

const { resolved, size, grid, form, mass } = handShade({
  job: { units: { system: "metric", ruler: "1 mm" } },
});
/** 30 mm long, for twelve cords. */
const LOCK = plannedLock({
  ...{ id: "a", name: "Lock a", housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
  ...{ dividerWires: 5, cordsMax: 12, cordMinMm: 1.4, cordMaxMm: 1.4 },
});

interface Asked {
  topDropMm?: number;
  columns?: number[];
  widthMm?: number;
  lift?: object;
  barShorterMm?: number;
  style?: string;
}
/** A shade 1,500 mm long that is 300 mm high when it is raised, worked on the right; the rail weighs 100 g a metre. */
function planned({ topDropMm = 400, columns = [100, 500, 900], widthMm = 1000, ...asked }: Asked = {}) {
  const { lift = {}, barShorterMm = 20, style = "flat" } = asked;
  const making = {
    ...resolved.making,
    fold: { ...resolved.making.fold, topDropMm },
    lift: { ...resolved.making.lift, controlSide: "right", knotsMm: 150, tailMm: 700, ...lift },
    board: { ...resolved.making.board, barShorterMm },
  };
  return topRail(
    {
      shade: {
        ...{ ...resolved, making, style, locks: [LOCK], cord: { id: "cord", name: "Cord", diameterMm: 1.4 } },
        ...{ board: { ...resolved.board, depthMm: 140 }, bar: { ...resolved.bar, massGPerM: 100 } },
        eye: { ...resolved.eye, outsideDiameterMm: 12, friction: 0.25, pulleyShare: undefined },
      },
      size: { ...size, finishedWidthMm: widthMm, finishedLengthMm: 1500, boardLengthMm: widthMm - 6 },
      grid: { ...grid, columns: columns.map((xMm, i) => ({ number: i + 1, xMm })), raisedHeightMm: 300 },
      ...{ form, mass: { ...mass, totalKg: 2, parts: [{ part: "bar", label: "Bar", massKg: 2 }] } },
      liftParts: { takeUp: "lock", lock: LOCK },
    } as never,
    {
      ...{ takeUp: "lock", eyes: [{ zMm: 60 }], eyeDiameterMm: 12, seat: { zMm: 60 }, housingWidthMm: 22 },
      cords: [{ path: [{ zMm: 60 }, { zMm: 60 }, { zMm: 60 }] }],
    } as never,
  );
}
const rail = (asked: Asked = {}) => planned(asked).values?.rail;

describe("a top that is let down", () => {
  it("hangs on the outer columns and as many between as keep a bay to 900 mm, alike from both ends", () => {
    const even = (count: number, apart: number) => Array.from({ length: count }, (_, i) => 50 + apart * i);
    const chosen = (columns: number[]) =>
      rail({ columns, widthMm: 100 + (columns.at(-1) ?? 0) - 50 })?.cords.map(({ column }) => column);
    expect(chosen(even(4, 300))).toEqual([1, 4]);
    expect(chosen(even(4, 301))).toEqual([1, 2, 3, 4]);
    expect(chosen(even(5, 300))).toEqual([1, 3, 5]);
    expect(chosen(even(7, 301))).toEqual([1, 3, 5, 7]);
    expect(chosen(even(8, 260))).toEqual([1, 3, 6, 8]);
    expect(chosen(even(10, 310))).toEqual([1, 3, 5, 6, 8, 10]);
    expect(chosen(even(2, 400))).toEqual([1, 2]);
  });

  it("comes down as far as is asked, to where the raised stack hangs at most", () => {
    expect([rail()?.dropMm, rail({ topDropMm: 1200 })?.dropMm, rail({ topDropMm: 1300 })?.dropMm]).toEqual([
      400, 1200, 1200,
    ]);
    expect(rail({ topDropMm: 0 })).toBeUndefined();
    expect([rail({ barShorterMm: 999 })?.railMm, rail({ barShorterMm: 1000 })]).toEqual([1, undefined]);
    expect(rail({ style: "austrian" })).toBeUndefined();
    expect(planned({ topDropMm: 0 }).workings).toEqual([]);
  });

  it("takes cords of run, drop, tail and knots, from the other end of the board", () => {
    const whole = rail();
    expect(whole?.side).toBe("left");
    expect(rail({ lift: { controlSide: "left" } })?.side).toBe("right");
    // Behind the lift, just inside the last eye at 100 mm: 100 + 6 + 12 + 15 mm.
    expect(whole?.seat.xMm).toBe(133);
    expect(
      whole?.cords.map(({ runMm, lengthMm, cutMm, knotsMm }) => [runMm, lengthMm, cutMm, knotsMm]),
    ).toEqual([
      [33, 33 + 400 + 700 + 150, 1283, 150],
      [767, 767 + 400 + 700 + 150, 2017, 150],
    ]);
    expect(whole).toMatchObject({ tailDownMm: 700, tailUpMm: 1100, cordTotalMm: 1283 + 2017 });
    // Half of the shade where no tail is set.
    expect(rail({ lift: { tailMm: undefined } })).toMatchObject({ tailDownMm: 750, tailUpMm: 1150 });
  });

  it("carries shade and rail: 2 kg and 980 mm at 100 g a metre", () => {
    const whole = rail();
    expect(whole?.railMm).toBe(980);
    expectNear(whole?.massKg ?? 0, 0.098, 1e-12);
    expectNear(whole?.heldN ?? 0, 9.80665 * 2.098, 1e-9);
    const cords = whole?.cords ?? [];
    expectNear(
      whole?.pullN ?? 0,
      cords.reduce((sum, { pullN }) => sum + pullN, 0),
      1e-9,
    );
    for (const { loadN, pullN } of cords) {
      // A quarter turn over its own eye and the roller, which passes on 91.7 %; less than 0.6 rad on its way: e^(0.25 · 0.6) = 1.16.
      expect(pullN).toBeGreaterThanOrEqual((loadN * Math.exp((0.25 * Math.PI) / 2)) / 0.917 - 1e-9);
      expect(pullN).toBeLessThan(1.16 * ((loadN * Math.exp((0.25 * Math.PI) / 2)) / 0.917));
    }
    const { course = [] } = whole ?? {};
    expect([course[0]?.downMm, course.at(-1)?.downMm]).toEqual([0, 400]);
    expectNear(course[0]?.heldN ?? 0, whole?.heldN ?? -1, 1e-12);
    // Let down, all of the 2 kg, which are a bar, hang on the lift's cords: the rail alone is left.
    for (const { heldN } of course.slice(1)) expectNear(heldN, 9.80665 * 0.098, 1e-9);
    expect(course.every(({ downMm }, i) => i === 0 || downMm >= (course[i - 1]?.downMm ?? 0))).toBe(true);
  });

  it("works out each length and pull beside its formula", () => {
    const ids = planned().workings.map((one) => workingOf(one).id);
    expect(ids).toEqual([
      ...[1, 3].map((column) => `rig.rail-cord-${column}-length`),
      ...["rig.rail-mass", "rig.rail-held"],
      ...[1, 3].map((column) => `rig.rail-cord-${column}-pull`),
      "rig.rail-pull",
    ]);
  });
});
