import { describe, expect, test } from "vitest";
import { pictureRig } from "../../src/drawing/index.ts";
import { LIFT_KINDS, type LiftKind } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";

function rigOf(kind: LiftKind, raise: number) {
  const job = jobWith(
    {
      opening: { widthsMm: [1200], heightsMm: [1500], sillAboveFloorMm: 900 },
      shade: { mount: "to-size", making: { lift: { kind } } },
    },
    { units: { system: "metric", ruler: "1 mm" } },
  );
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return { shade, cords: pictureRig(shade, job.units, raise).filter(({ number }) => number !== undefined) };
}

/** Where the cords of a lift leave the back of the shade, across, mm. */
describe.each(LIFT_KINDS)("cords of the picture, %s", (kind) => {
  test.each([0, 0.5, 1])("go up from their columns to what takes them up, raised by %s", (raise) => {
    const { shade, cords } = rigOf(kind, raise);
    const { lift, grid } = shade;
    expect(cords.map(({ number }) => number).sort()).toEqual(lift.cords.map(({ number }) => number).sort());
    for (const { number, points } of cords) {
      const columnX = lift.cords.find((cord) => cord.number === number)?.columnX;
      expect(points[0]?.slice(0, 2)).toEqual([columnX, (grid.rows[0]?.yMm ?? 0) - raise * grid.travelMm]);
      const [endX = Number.NaN] = points.at(-1) ?? [];
      if (lift.takeUp === "lock")
        expect(Math.abs(endX - lift.seat.xMm)).toBeLessThan(lift.housingLengthMm / 2);
      else if (lift.takeUp === "cleat")
        expect(Math.abs(endX - lift.turn.xMm)).toBeLessThan(lift.turn.diameterMm / 2);
      else expect(endX).toBe(columnX);
    }
  });
});
