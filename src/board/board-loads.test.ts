import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { type BoardLoads, fixingLoads } from "./board-loads.ts";

const sum = (list: number[]) => list.reduce((all, one) => all + one, 0);

describe("loads on fixings by the lever rule", () => {
  test.each([
    [
      "a point at 0.3 of the span: 14 and 6 N of 20 (AWC Design Aid 6, fig. 8)",
      { points: [{ atMm: 300, loadN: 20 }], evenN: 0, toMm: 1000 },
      [14, 6],
    ],
    [
      "a point at the end of an overhang of 0.2: −4 and 24 N of 20 (AWC Design Aid 6, fig. 20)",
      { points: [{ atMm: 1200, loadN: 20 }], evenN: 0, toMm: 1200 },
      [-4, 24],
    ],
    [
      "an even load over span and overhang: 4.8 and 7.2 N of 12 (AWC Design Aid 6, fig. 18)",
      { points: [], evenN: 12, toMm: 1200 },
      [4.8, 7.2],
    ],
  ] as const)("%s", (_, { points, evenN, toMm }, expected) => {
    const loads = fixingLoads({
      fromMm: 0,
      toMm,
      evenN,
      points: points.map((point) => ({ what: "eye", ...point })),
      supportsMm: [0, 1000],
    });
    expected.forEach((load, i) => {
      expectNear(loads[i] ?? Number.NaN, load, 1e-9);
    });
  });

  test("one fixing carries all", () => {
    const loads: BoardLoads = {
      fromMm: 0,
      toMm: 100,
      evenN: 2,
      points: [{ what: "lock", atMm: 90, loadN: 5 }],
      supportsMm: [50],
    };
    expect(fixingLoads(loads)).toEqual([7]);
  });

  test("add up to the load and balance its moment", () => {
    const anyLoads = fc
      .record({
        supports: fc.array(fc.double({ min: 20, max: 500, noNaN: true }), { minLength: 2, maxLength: 8 }),
        end: fc.double({ min: 0, max: 300, noNaN: true }),
        evenN: fc.double({ min: 0, max: 50, noNaN: true }),
        points: fc.array(
          fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true })),
        ),
      })
      .map(({ supports, end, evenN, points }): BoardLoads => {
        const supportsMm: number[] = [];
        for (const step of supports) supportsMm.push((supportsMm.at(-1) ?? 0) + step);
        const toMm = (supportsMm.at(-1) ?? 0) + end;
        return {
          fromMm: 0,
          toMm,
          evenN,
          points: points.map(([share, loadN]) => ({ what: "eye", atMm: share * toMm, loadN })),
          supportsMm,
        };
      });
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const found = fixingLoads(loads);
        const total = loads.evenN + sum(loads.points.map(({ loadN }) => loadN));
        const moment =
          (loads.evenN * (loads.fromMm + loads.toMm)) / 2 +
          sum(loads.points.map(({ atMm, loadN }) => atMm * loadN));
        expectNear(sum(found), total, 1e-6);
        expectNear(sum(found.map((load, i) => load * (loads.supportsMm[i] ?? 0))), moment, 1e-4);
      }),
    );
  });
});
