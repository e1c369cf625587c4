import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import type { LiftTube } from "../../shade-plan/index.ts";
import { tubeStiffness } from "./tube-bend.ts";

const tube: LiftTube = {
  id: "t",
  name: "Tube",
  diameterMm: 20,
  fromMm: 0,
  toMm: 1000,
  lengthMm: 1000,
  zMm: 20,
  axisMm: 20,
};
const part = { id: "t", name: "Tube", diameterMm: 20, wallMm: 2, metal: "steel" as const, spoolLengthMm: 20 };
const spool = (number: number, xMm: number) => ({ number, xMm, lengthMm: 20, coreMm: 20, flangeMm: 30 });
const support = (number: number, xMm: number) => ({ number, xMm });
const stiffness = (spools: number[], loads: number[], supports: number[], driveMm: number) =>
  tubeStiffness(
    part,
    {
      tube,
      spools: spools.map((x, i) => spool(i + 1, x)),
      supports: supports.map((x, i) => support(i + 1, x)),
      driveMm,
    },
    loads,
    11,
  ).values;

describe("the lift tube", () => {
  // PL³/48EI, AWC Design Aid 6 (2007), figure 7.
  test("bends in the middle as a beam on two supports", () => {
    const I = (Math.PI * (20 ** 4 - 16 ** 4)) / 64;
    expectNear(
      stiffness([500], [30], [0, 1000], 0)?.bendMm ?? 0,
      (30 * 1000 ** 3) / (48 * 200_000 * I),
      1e-6,
    );
  });

  // PL³/48EI again: the tube ends in the drive's face, and the drive bears it there although its middle lies beyond.
  test.each([
    ["left", [1000], -15],
    ["right", [0], 1015],
  ] as const)("a drive beyond the %s end bears that end", (_, supports, driveMm) => {
    const I = (Math.PI * (20 ** 4 - 16 ** 4)) / 64;
    expectNear(
      stiffness([500], [30], [...supports], driveMm)?.bendMm ?? -1,
      (30 * 1000 ** 3) / (48 * 200_000 * I),
      1e-6,
    );
  });

  // Angle of twist M·l/(G·K) of a round tube, K = π(D⁴ − d⁴)/32 (Timoshenko, Strength of Materials I, ch. 10).
  test("twists from the drive to the far spool by M·l/(G·K)", () => {
    const K = (Math.PI * (20 ** 4 - 16 ** 4)) / 32;
    // Spool 1 sits at the drive and does not lag; spool 2 lags by its own torque over 900 mm.
    const twist = stiffness([100, 1000], [8, 8], [0, 1000], 100)?.twistMm ?? 0;
    expectNear(twist, (11 * 8 * 11 * 900) / (77_000 * K), 1e-9);
  });

  test("a drive in the middle twists it less than one at the end", () => {
    const at = (driveMm: number) => stiffness([100, 500, 900], [8, 8, 8], [0, 1000], driveMm)?.twistMm ?? 0;
    expect(at(500)).toBeLessThan(at(0));
  });

  test("nothing is said of a tube whose wall is not known", () => {
    const { wallMm: _, ...bare } = part;
    const parts = { tube, spools: [spool(1, 500)], supports: [support(1, 0), support(2, 1000)], driveMm: 0 };
    expect(tubeStiffness(bare, parts, [8], 11).values).toBeUndefined();
  });
});
