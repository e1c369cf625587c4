import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plan } from "../../plan/index.ts";
import type { CordLockLift } from "../../shade-plan/index.ts";

interface Parts {
  eyeMm: number;
  housingHeightMm: number;
  straightRunMm?: number;
  controlSide?: "left" | "right";
}

function planned({ eyeMm, housingHeightMm, straightRunMm = 12, controlSide = "right" }: Parts) {
  const [shade] = plan(
    jobWith(
      {
        opening: { widthsMm: [1000], heightsMm: [1500] },
        shade: {
          mount: "to-size",
          making: { lift: { lock: "mine", eye: "mine", cord: "mine", straightRunMm, controlSide } },
        },
      },
      {
        units: { system: "metric", ruler: "1 mm" },
        hardware: {
          locks: [
            {
              id: "mine",
              name: "My lock",
              housingLengthMm: 30,
              housingWidthMm: 22,
              housingHeightMm,
              dividerWires: 3,
              cordsMax: 7,
              cordMinMm: 1,
              cordMaxMm: 2,
              rollerDiameterMm: 5,
            },
          ],
          eyes: [{ id: "mine", name: "My eye", outsideDiameterMm: eyeMm }],
          cords: [{ id: "mine", name: "My cord", diameterMm: 1.4 }],
        },
      },
    ),
  ).shades;
  if (shade?.lift.kind !== "cord-lock") throw new Error("invalid test job: no lock");
  const lift: CordLockLift = shade.lift;
  return { lift, finding: shade.findings.find(({ id }) => id === "rig.entry-not-level") };
}

describe("the height at which cords enter the lock", () => {
  test("a 40 mm eye before a 12 mm lock: found, by plane trigonometry", () => {
    const { lift, finding } = planned({ eyeMm: 40, housingHeightMm: 12 });
    // A ring of 40 mm with 8 mm wire, up to the board: its opening ends 32 mm below it. Rollers of 5 mm, their axis at 6 mm.
    const inEye = 32 - 0.7;
    const overRoller = 6 - 2.5 - 0.7;
    const run = Math.min(...lift.eyes.map(({ xMm }) => Math.abs(xMm - lift.seat.xMm)));
    expectNear(lift.entry.eyeLevelMm, inEye, 1e-9);
    expectNear(lift.entry.lockLevelMm, overRoller, 1e-9);
    // The angle by the cosine rule, from the three sides alone.
    const rise = inEye - overRoller;
    const slant = Math.hypot(run, rise);
    const angle = (Math.acos((run ** 2 + slant ** 2 - rise ** 2) / (2 * run * slant)) * 180) / Math.PI;
    expectNear(lift.entry.climbDeg, angle, 1e-9);
    // By similar triangles: so far below the board where it meets the housing’s end, 15 mm from its middle.
    expectNear(lift.entry.mouthLevelMm, overRoller + (rise * 15) / run, 1e-9);
    expect(finding?.severity).toBe("fix");
    expect(finding?.text).toContain("climbs");
    // A smaller eye answers it, as planning anew shows.
    expect(finding?.remedies.map(({ label }) => label).join(" ")).toContain("Screw eye 12 mm");
  });

  test("an eye at the height of the roller: nothing to say", () => {
    // 0.8·D − 0.7 = H/2 − 2.5 − 0.7.
    const level = planned({ eyeMm: 12, housingHeightMm: 24.2 });
    expectNear(level.lift.entry.climbDeg, 0, 1e-9);
    expect(level.finding).toBeUndefined();
  });

  test("a low eye before a high lock descends", () => {
    const { lift, finding } = planned({ eyeMm: 6, housingHeightMm: 60 });
    expect(lift.entry.climbDeg).toBeLessThan(0);
    expect(finding?.text).toContain("descends");
  });

  test("the higher the eye, the steeper; the longer the straight run, the flatter; on either hand alike", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 6, max: 40 }),
        fc.integer({ min: 12, max: 40 }),
        (eyeMm, housingHeightMm) => {
          const one = planned({ eyeMm, housingHeightMm }).lift.entry;
          expect(planned({ eyeMm: eyeMm + 4, housingHeightMm }).lift.entry.eyeLevelMm).toBeGreaterThan(
            one.eyeLevelMm,
          );
          const farther = planned({ eyeMm, housingHeightMm, straightRunMm: 40 }).lift.entry;
          expect(Math.abs(farther.climbDeg)).toBeLessThanOrEqual(Math.abs(one.climbDeg) + 1e-9);
          const left = planned({ eyeMm, housingHeightMm, controlSide: "left" }).lift.entry;
          expectNear(left.climbDeg, one.climbDeg, 1e-6);
        },
      ),
      { numRuns: 12 },
    );
  });
});
