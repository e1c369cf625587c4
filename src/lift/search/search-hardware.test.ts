import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { HARDWARE_NEED } from "../../../test/hardware-need.ts";
import { resolvedWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plannedLock, rigInput } from "../../../test/rig-inputs.ts";
import { CATALOGUE, type Cord, type CordLock, type Eye } from "../../job/index.ts";
import { misfits } from "../lock/lock-fit.ts";
import type { HardwareNeed, PartShelf } from "./need.ts";
import { searchHardware } from "./search-hardware.ts";

const need = (rest: Partial<HardwareNeed> = {}): HardwareNeed => ({ ...HARDWARE_NEED, ...rest });
const shelf: PartShelf = CATALOGUE;

describe("choosing hardware", () => {
  test("eight cords of 1.4 mm: the lock of six slots takes them, that of four does not, with its figure", () => {
    const columnsMm = [50, 200, 350, 500, 650, 800, 950, 1100];
    const only = { ...shelf, cords: shelf.cords.filter(({ diameterMm }) => diameterMm === 1.4) };
    const found = searchHardware(need({ columnsMm, widthMm: 1150, boardLengthMm: 1144 }), only);
    const locks = found.sets.filter(({ kind }) => kind === "cord-lock").map(({ lock }) => lock?.id);
    expect(new Set(locks)).toEqual(new Set(["lock-6-slot"]));
    const refusal = found.refusals.find(({ partIds }) => partIds.includes("lock-4-slot"));
    expect(refusal?.text).toBe("“Four-slot lock” takes at most 7 cords; this shade has 8.");
  });

  test("the pull of a set is that of the planned rig but for the small turns into the lock", () => {
    const input = rigInput(
      resolvedWith({ opening: { widthsMm: [1100], heightsMm: [1500] }, shade: { mount: "to-size" } }),
    );
    const { values: lift } = plannedLock(input);
    const found = searchHardware(
      need({ columnsMm: input.grid.columns.map(({ xMm }) => xMm), heldRaisedN: lift.heldN }),
      shelf,
    );
    const same = found.sets.find(
      ({ lock, cord, eye }) => lock?.id === lift.lockId && cord.id === lift.cordId && eye?.id === "eye-12",
    );
    expect(same?.pullN).toBeLessThanOrEqual(lift.pullN + 1e-9);
    expectNear((same?.pullN ?? 0) / lift.pullN, 1, 0.06);
  });

  test("considered is every combination, and feasible what brute force finds", () => {
    const locks: CordLock[] = [2, 4, 6, 9].map((cordsMax) => ({
      ...(shelf.locks[0] as CordLock),
      id: `lock-${cordsMax}`,
      cordsMax,
      price: cordsMax,
    }));
    const cords: Cord[] = [0.8, 1.4, 2.5].flatMap((diameterMm) =>
      [20, 900].map((breakingN) => ({
        id: `cord-${diameterMm}-${breakingN}`,
        name: "Cord",
        diameterMm,
        breakingN,
      })),
    );
    const eyes: Eye[] = [0.1, 0.9].map((friction) => ({
      id: `eye-${friction}`,
      name: `Eye ${friction}`,
      outsideDiameterMm: 12,
      friction,
    }));
    const one = need();
    const found = searchHardware(one, { locks, cords, eyes, tubes: [], drives: [] }, 500);
    let feasible = 0;
    for (const lock of locks)
      for (const cord of cords)
        for (const { friction = 0 } of eyes) {
          const fits = misfits(lock, cord, 5).every(({ severity }) => severity !== "stop");
          const ratio = Math.exp((friction * Math.PI) / 2) / 0.917;
          // Reactions of four equal bays with these overhangs are at most 0.3 of the whole: the heaviest cord.
          const pulls = 12 * ratio * 1.2 < 44;
          if (fits && cord.breakingN === 900 && pulls) feasible++;
        }
    // Without a lock each cord turns by a half: any cord goes, and the eyes cost twice the turn.
    for (const cord of cords)
      for (const { friction = 0 } of eyes)
        if (cord.breakingN === 900 && 12 * Math.exp(friction * Math.PI) * 1.2 < 44) feasible++;
    expect(found.considered).toBe(4 * 6 * 2 + 6 * 2);
    expect(found.feasible).toBe(feasible);
    expect(found.sets.length).toBe(feasible);
  });

  test("every set that is offered goes together, the order is by pull, and none is lost between lists", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        fc.double({ min: 0.5, max: 60, noNaN: true }),
        fc.double({ min: 0.2, max: 8, noNaN: true }),
        (columns, heldRaisedN, massKg) => {
          const columnsMm = Array.from({ length: columns }, (_, i) => 50 + (1000 * i) / (columns - 1));
          const found = searchHardware(
            need({ columnsMm, heldRaisedN, heldLoweredN: heldRaisedN / 3, massKg }),
            shelf,
          );
          for (const { lock, cord, drive, pullN } of found.sets) {
            if (lock !== undefined) {
              expect(misfits(lock, cord, columns).filter(({ severity }) => severity === "stop")).toEqual([]);
            }
            if (drive?.massMaxKg !== undefined) expect(massKg).toBeLessThanOrEqual(drive.massMaxKg);
            expect(pullN).toBeLessThanOrEqual(44);
            expect(Number.isFinite(pullN)).toBe(true);
          }
          found.sets.slice(1).forEach(({ pullN }, i) => {
            expect(pullN).toBeGreaterThanOrEqual((found.sets[i]?.pullN ?? 0) - 0.051);
          });
          expect(found.considered).toBe(2 * 3 * 2 + 3 * 2 + 2 * shelf.drives.length * 3);
          if (found.feasible < found.considered) expect(found.refusals.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 200 },
    );
  });

  test("a heavier shade never has more sets, nor an easier best pull over eyes", () => {
    const at = (heldRaisedN: number) =>
      searchHardware(need({ heldRaisedN, heldLoweredN: heldRaisedN / 3 }), shelf);
    for (let n = 4; n < 60; n += 4) {
      expect(at(n + 4).feasible).toBeLessThanOrEqual(at(n).feasible);
    }
  });
});
