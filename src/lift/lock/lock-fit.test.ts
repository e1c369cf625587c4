import { describe, expect, test } from "vitest";
import type { Cord, CordLock } from "../../job/index.ts";
import { lockRoom, misfits } from "./lock-fit.ts";

const bare: CordLock = {
  id: "bare",
  name: "Bare lock",
  housingLengthMm: 30,
  housingWidthMm: 22,
  housingHeightMm: 24,
  dividerWires: 2,
  cordsMax: 6,
  screws: 2,
};

/** As the pages describe them: one for 1.4 or 1.8 mm, one that takes thin cord. */
const three: CordLock = { ...bare, cordMinMm: 1.4, cordMaxMm: 1.8 };
const five: CordLock = {
  ...bare,
  dividerWires: 4,
  cordsMax: 10,
  cordMinMm: 0.9,
  cordMaxMm: 1.4,
  thinCordMm: 0.9,
  thinCordsMax: 9,
};

const cord = (diameterMm: number): Cord => ({ id: "c", name: "Cord", diameterMm });
const judged = (lock: CordLock, diameterMm: number, count = 4) =>
  misfits(lock, cord(diameterMm), count).map(({ id, severity }) => `${severity} ${id}`);

describe("room in a lock", () => {
  // Source: “Hardware instruction and gallery pages”, cord-lock questions.
  test.each([
    ["3 slots, 6 cords, 2 in a slot", three, 1.4, 3, 2, 6],
    ["5 slots, 10 cords of 1.4 mm, 2 in a slot", five, 1.4, 5, 2, 10],
    ["5 slots, 0.9 mm in the 3 inner slots, 9 cords, 3 in a slot", five, 0.9, 3, 3, 9],
  ])("%s", (_, lock, diameter, slotsInUse, perSlot, most) => {
    const room = lockRoom(lock, cord(diameter));
    expect(room.lastSlot - room.firstSlot + 1).toBe(slotsInUse);
    expect(room.perSlot).toBe(perSlot);
    expect(room.cordsMax).toBe(most);
  });

  test("a lock without inner slots takes no thin cord", () => {
    const narrow = { ...bare, dividerWires: 1, thinCordMm: 1 };
    expect(lockRoom(narrow, cord(0.9)).cordsMax).toBe(0);
    expect(judged(narrow, 0.9, 1)).toContain("stop lift.too-many-cords");
  });
});

describe("misfits of the published locks", () => {
  // Source: the same pages: three-slot lock for 1.4 or 1.8 mm, not 0.9; five-slot lock not for 1.8.
  test.each([
    [three, 1.4, []],
    [three, 1.8, []],
    [three, 0.9, ["stop lift.cord-diameter"]],
    [five, 1.4, []],
    [five, 0.9, []],
    [five, 1.8, ["stop lift.cord-diameter"]],
  ] as const)("%o with cord of %f mm", (lock, diameter, expected) => {
    expect(judged(lock, diameter)).toEqual(expected);
  });

  test.each([
    [three, 1.4, 6, 7],
    [five, 1.4, 10, 11],
    [five, 0.9, 9, 10],
  ] as const)("capacity: at and above the limit", (lock, diameter, at, above) => {
    expect(judged(lock, diameter, at)).toEqual([]);
    expect(judged(lock, diameter, above)).toEqual(["stop lift.too-many-cords"]);
  });
});

describe("one nominal diameter: 10 % is looked at, 25 % refused (our choice)", () => {
  const nominal = { ...bare, cordNominalMm: 1 };
  test.each([
    [1, []],
    [1.1, []],
    [0.9, []],
    [1.101, ["fix lift.cord-diameter"]],
    [0.899, ["fix lift.cord-diameter"]],
    [1.25, ["fix lift.cord-diameter"]],
    [1.251, ["stop lift.cord-diameter"]],
    [0.749, ["stop lift.cord-diameter"]],
  ])("%f mm", (diameter, expected) => expect(judged(nominal, diameter)).toEqual(expected));

  test("a stated range goes before it", () => {
    expect(judged({ ...nominal, cordMinMm: 0.5, cordMaxMm: 2 }, 2)).toEqual([]);
  });
});

describe("end gap", () => {
  const gapped = { ...bare, cordNominalMm: 1, endGapMm: 1 };
  test.each([
    [1.01, "note lift.end-gap"],
    [1.17, "note lift.end-gap"],
  ])("cord of %f mm beside a gap of 1 mm", (diameter, expected) => {
    expect(judged({ ...gapped, cordNominalMm: diameter }, diameter)).toEqual([expected]);
  });

  // “Hardware instruction and gallery pages”: thin cord goes in the inner slots, where it cannot come to the gap.
  test.each([0.99, 1])(
    "cord of %f mm that could slip in keeps to the inner slots, and does not jam there",
    (d) => {
      const lock = { ...gapped, cordNominalMm: d, dividerWires: 2, cordsMax: 6 };
      expect(lockRoom(lock, cord(d))).toMatchObject({
        innerOnly: true,
        firstSlot: 2,
        lastSlot: 2,
        cordsMax: 2,
      });
      expect(judged(lock, d, 2)).toEqual([]);
      expect(judged(lock, d, 3)).toEqual(["stop lift.too-many-cords"]);
      expect(judged({ ...lock, dividerWires: 0 }, d, 1)).toEqual(["stop lift.too-many-cords"]);
    },
  );
  test("with 15 % in hand", () => expect(judged({ ...gapped, cordNominalMm: 1.18 }, 1.18)).toEqual([]));

  test("unknown gap and unknown range are not proven, and the test is described", () => {
    const [misfit] = misfits(bare, cord(1.4), 4);
    expect(misfit?.severity).toBe("unproven");
    expect(misfit?.reason).toMatch(/five minutes.*kilogram.*twenty times/);
  });
});
