import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawSheet } from "../../src/drawing/index.ts";
import { LIFT_KINDS } from "../../src/job/index.ts";
import { type Plan, plan, type ShadePlan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

type Head = { kind: "angled" | "arched"; fallMm: number; high: "left" | "right" };
type Lift = Record<string, unknown>;

function planned(widthMm: number, heightMm: number, head: Head | undefined, lift: Lift): [Plan, ShadePlan] {
  const made = plan(
    jobWith(
      {
        opening: {
          widthsMm: [widthMm],
          heightsMm: [heightMm],
          sillAboveFloorMm: 700,
          ...(head === undefined ? {} : { head }),
        },
        shade: { mount: "to-size", making: { lift } },
      },
      { units: { system: "metric", ruler: "1 mm" } },
    ),
  );
  const [shade] = made.shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return [made, shade];
}

const anyHead = fc.record({
  kind: fc.constantFrom("angled" as const, "arched" as const),
  // An arc rises by half its width at most.
  fallMm: fc.integer({ min: 0, max: 340 }),
  high: fc.constantFrom("left" as const, "right" as const),
});
const anySide = fc.constantFrom("left" as const, "right" as const);
const anyWidth = fc.integer({ min: 700, max: 1500 });

/** Below the top line, by the height of a slope or of a circle through its ends and crown. */
function headMm({ kind, fallMm, high }: Head, widthMm: number, xMm: number): number {
  if (fallMm === 0) return 0;
  if (kind === "angled") return (fallMm * (high === "left" ? xMm : widthMm - xMm)) / widthMm;
  const radius = (widthMm ** 2 / 4 + fallMm ** 2) / (2 * fallMm);
  return radius - Math.sqrt(radius ** 2 - (xMm - widthMm / 2) ** 2);
}

describe("where the cords end", () => {
  test("hangs on the head over their lock alone: not on where the head is highest, from which the drawing counts", () => {
    fc.assert(
      fc.property(anyWidth, anyHead, anySide, (widthMm, head, controlSide) => {
        const seatMm = controlSide === "right" ? widthMm - 110 : 110;
        const lift = { kind: "cord-lock", controlSide, seatMm, tailMm: 600 };
        const [, shaped] = planned(widthMm, 1900, head, lift);
        const [, level] = planned(widthMm, 1900 - headMm(head, widthMm, seatMm), undefined, lift);
        if (shaped.lift.takeUp !== "lock" || level.lift.takeUp !== "lock") throw new Error("no lock");
        expectNear(
          shaped.lift.tailEndAboveFloorLoweredMm ?? -1,
          level.lift.tailEndAboveFloorLoweredMm ?? -2,
          1e-6,
        );
      }),
      { numRuns: 60 },
    );
  });

  test("is drawn, front and back, as high above the floor as the plan says", () => {
    const anyKind = fc.constantFrom("cord-lock" as const, "cleat" as const);
    fc.assert(
      fc.property(anyWidth, anyHead, anySide, anyKind, (widthMm, head, controlSide, kind) => {
        const [made, shade] = planned(widthMm, 1900, head, { kind, controlSide, tailMm: 600 });
        if (shade.lift.takeUp === "tube") throw new Error("no tail");
        const { topAboveFloorMm = Number.NaN } = shade.size;
        for (const sheet of ["front", "back"] as const) {
          const { primitives } = drawSheet(sheet, made, shade, { raise: 0 });
          const ends = primitives.flatMap((one) =>
            one.kind === "polyline" && one.part === "tail" && one.closed !== true
              ? one.points.map(([, y]) => y)
              : [],
          );
          expectNear(
            topAboveFloorMm - Math.max(...ends),
            shade.lift.tailEndAboveFloorLoweredMm ?? Number.NaN,
            0.01,
          );
        }
      }),
      { numRuns: 40 },
    );
  });
});

test("a head of no fall is a level head, whatever the lift, the hand and the shape it is said to have", () => {
  fc.assert(
    fc.property(
      anyWidth,
      anyHead,
      anySide,
      fc.constantFrom(...LIFT_KINDS),
      (widthMm, head, controlSide, kind) => {
        const [, none] = planned(widthMm, 1500, { ...head, fallMm: 0 }, { kind, controlSide });
        const [, level] = planned(widthMm, 1500, undefined, { kind, controlSide });
        const parts = ({ lift, grid, cloth, mass, board }: ShadePlan) =>
          JSON.parse(JSON.stringify({ lift, grid, cloth, mass, board }));
        const { cutMm: _own, ...rest } = parts(none).board;
        const { cutMm: _other, ...same } = parts(level).board;
        expectNear(_own, _other, 1e-9);
        expect({ ...parts(none), board: rest }).toEqual({ ...parts(level), board: same });
      },
    ),
    { numRuns: 40 },
  );
});
