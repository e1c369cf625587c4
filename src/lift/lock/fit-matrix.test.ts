import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { plannedLock } from "../../job/index.ts";
import { fitCell, fitMatrix } from "./fit-matrix.ts";
import { misfits } from "./lock-fit.ts";

const cord = (diameterMm: number) => ({ id: `c-${diameterMm}`, name: "Cord", diameterMm });
const lock = (more: object) =>
  plannedLock({
    id: "l",
    name: "Lock",
    housingLengthMm: 30,
    housingWidthMm: 30,
    housingHeightMm: 30,
    dividerWires: 4,
    cordsMax: 10,
    ...more,
  });

describe("locks by cords", () => {
  // “Hardware instruction and gallery pages”: five slots for ten cords of 1.4 mm; 0.9 mm in the inner slots, nine at most;
  // not for 1.8 mm; three slots for six cords of 1.4 or 1.8 mm, not for 0.9 mm.
  const five = lock({ cordMinMm: 0.9, cordMaxMm: 1.4, thinCordMm: 0.9, thinCordsMax: 9 });
  const three = lock({ dividerWires: 2, cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.8 });

  test.each([
    [five, 1.4, 8, "fits"],
    [five, 0.9, 8, "inner-slots"],
    [five, 0.9, 10, "too-many"],
    [five, 1.8, 8, "too-thick"],
    [three, 0.9, 4, "jams"],
    [three, 1.4, 7, "too-many"],
    [three, 1.8, 6, "fits"],
    [lock({}), 1.4, 4, "not-known"],
    [lock({ cordsMax: undefined, endGapMm: 0.5 }), 1.4, 4, "not-known"],
    [lock({ dividerWires: 1, endGapMm: 1 }), 0.9, 1, "jams"],
    [lock({ dividerWires: undefined, cordNominalMm: 1.4 }), 1.4, 2, "not-known"],
  ] as const)("%o with cord of %f mm, %i of them: %s", (one, diameter, count, verdict) => {
    expect(fitCell(one, cord(diameter), count).verdict).toBe(verdict);
  });

  test("a hold test settles what no label states", () => {
    const tests = { hold: { readingsN: [60], cordDiameterMm: 1.4 } };
    expect(fitCell(lock({ cordsMax: undefined, endGapMm: 0.5, tests }), cord(1.4), 4).verdict).toBe("fits");
  });

  test("what fits has nothing graver than a note against it, and every other word has its reason", () => {
    fc.assert(
      fc.property(
        fc.record({
          dividerWires: fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined }),
          cordsMax: fc.option(fc.integer({ min: 1, max: 12 }), { nil: undefined }),
          cordNominalMm: fc.option(fc.double({ min: 0.5, max: 3, noNaN: true }), { nil: undefined }),
          endGapMm: fc.option(fc.double({ min: 0, max: 2, noNaN: true }), { nil: undefined }),
        }),
        fc.double({ min: 0.3, max: 6, noNaN: true }),
        fc.integer({ min: 1, max: 14 }),
        (more, diameter, count) => {
          const one = lock(more);
          const [row] = fitMatrix([one], [cord(diameter)], count);
          const cell = row?.cells[0];
          const grave = misfits(one, cord(diameter), count).filter(({ severity }) => severity !== "note");
          if (cell?.verdict === "fits" || cell?.verdict === "inner-slots") expect(grave).toEqual([]);
          else expect(cell?.reasons.length).toBeGreaterThan(0);
        },
      ),
    );
  });
});
