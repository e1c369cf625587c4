import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { tailAt } from "./tail-at.ts";

describe("tail at a height", () => {
  const lift = { tailLoweredMm: 762, tailRaisedMm: 2113.28, tailEndAboveFloorLoweredMm: 1500 };

  test("grows by the travel that is done (X1: 30 in lowered, 83.2 in raised)", () => {
    expectNear(tailAt(lift, 0).tailMm, 762, 1e-9);
    expectNear(tailAt(lift, 0.5).tailMm, 762 + (53.2 * 25.4) / 2, 1e-9);
    expectNear(tailAt(lift, 1).tailMm, 83.2 * 25.4, 1e-9);
  });

  test("its end sinks as it grows, down to the floor", () => {
    expectNear(tailAt(lift, 0.5).endAboveFloorMm ?? Number.NaN, 1500 - (53.2 * 25.4) / 2, 1e-9);
    expectNear(tailAt({ ...lift, tailEndAboveFloorLoweredMm: 100 }, 1).endAboveFloorMm ?? Number.NaN, 0, 0);
  });

  test("says nothing of the floor where the height is not known", () => {
    expect(tailAt({ tailLoweredMm: 1, tailRaisedMm: 2 }, 1)).toEqual({ tailMm: 2 });
  });

  test("tail and its end above the floor always make the same height, until it lies down", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (raised) => {
        const { tailMm, endAboveFloorMm = Number.NaN } = tailAt(lift, raised);
        expectNear(tailMm + endAboveFloorMm, 762 + 1500, 1e-9);
      }),
    );
  });
});
