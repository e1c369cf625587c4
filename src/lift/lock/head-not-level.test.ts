import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plannedLock, rigInput } from "../../../test/rig-inputs.ts";

const WIDE = 1200;
const LONG = 2000;
const SILL = 600;

/** 1200 × 2000 mm, five columns or so, worked at `controlSide`. */
function under(
  head: { kind: "angled" | "arched"; fallMm: number; high: "left" | "right" },
  controlSide: "left" | "right",
) {
  return rigInput(
    resolvedWith({
      opening: { widthsMm: [WIDE], heightsMm: [LONG], sillAboveFloorMm: SILL, head },
      shade: { style: "flat", mount: "to-size", making: { lift: { controlSide, kind: "cord-lock" } } },
    }),
  );
}

describe("a head that falls 500 mm from left to right, the lock at its low end", () => {
  const input = under({ kind: "angled", fallMm: 500, high: "left" }, "right");
  const { values: lift } = plannedLock(input);
  const { shade, liftParts } = input;
  // Similar triangles: below the top line by the share of the width.
  const lockBelowTopMm = (500 * lift.seat.xMm) / WIDE;
  const slope = Math.hypot(WIDE, 500) / WIDE;

  test("the tail ends as high above the floor as its lock hangs, not as the highest point of the head", () => {
    const underLock = SILL + LONG - lockBelowTopMm - shade.board.thicknessMm - liftParts.lock.housingHeightMm;
    expectNear(lift.tailEndAboveFloorLoweredMm ?? -1, Math.max(0, underLock - lift.tailLoweredMm), 1e-6);
    expectNear(lift.tailEndAboveFloorRaisedMm ?? -1, Math.max(0, underLock - lift.tailRaisedMm), 1e-6);
  });

  test("a cord runs along the board and not along a level line (Pythagoras)", () => {
    for (const cord of lift.cords) {
      const run = Math.abs(lift.seat.xMm - cord.columnX) * slope;
      expectNear(cord.runMm, run, 1e-6);
      expectNear(cord.lengthMm, cord.riseMm + run + cord.tailMm + cord.knotsMm, 1e-6);
    }
  });

  test("where the board falls away towards the lock, a cord turns by that much more than a quarter turn", () => {
    const { friction = 0.25 } = shade.eye;
    const extra = Math.exp(friction * Math.atan2(500, WIDE));
    const level = plannedLock(under({ kind: "angled", fallMm: 0, high: "left" }, "right")).values;
    const ratio = (of: typeof lift) => (of.cords[0]?.pullN ?? 0) / (of.cords[0]?.loadN ?? 1);
    // The small turns beside the eyes differ a little, since eyes lie farther apart on the slope.
    expectNear(ratio(lift) / ratio(level), extra, 0.01);
  });

  test("the lock keeps clear of the eyes along the board", () => {
    const beside = shade.eye.outsideDiameterMm / 2 + liftParts.lock.housingLengthMm / 2;
    for (const eye of lift.eyes) {
      expect(Math.abs(eye.xMm - lift.seat.xMm) * slope).toBeGreaterThanOrEqual(beside - 1e-6);
    }
  });
});

test("under an arc 500 mm high a cord runs along the arc", () => {
  const input = under({ kind: "arched", fallMm: 500, high: "left" }, "right");
  const { values: lift } = plannedLock(input);
  // R = (w²/4 + f²) / 2f, and the arc from the crown is R·asin(x/R).
  const radius = (WIDE ** 2 / 4 + 500 ** 2) / 1000;
  const along = (xMm: number) => radius * Math.asin((xMm - WIDE / 2) / radius);
  for (const cord of lift.cords) {
    expectNear(cord.runMm, Math.abs(along(lift.seat.xMm) - along(cord.columnX)), 1e-6);
  }
});

test("a head of no fall is a level head", () => {
  const level = rigInput(
    resolvedWith({
      opening: { widthsMm: [WIDE], heightsMm: [LONG], sillAboveFloorMm: SILL },
      shade: {
        style: "flat",
        mount: "to-size",
        making: { lift: { controlSide: "right", kind: "cord-lock" } },
      },
    }),
  );
  const none = under({ kind: "arched", fallMm: 0, high: "left" }, "right");
  expect(plannedLock(none).values).toEqual(plannedLock(level).values);
});
