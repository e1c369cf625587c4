import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyJob } from "../../test/arbitrary-job.ts";
import { resolvedWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { PLAIN_MASS, plannedLock, resolvedShadesOf, rigInput } from "../../test/rig-inputs.ts";
import { figureId } from "../figures/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { upToMark } from "../units/index.ts";
import type { LockInput } from "./lift-input.ts";
import { lockRoom } from "./lock/lock-fit.ts";
import { countCrossings } from "./lock/verify-rig.ts";

const planned = (input: LockInput) => plannedLock(input);

/** Every window of a job that the schema accepts, sensible or not. */
const anyInput = anyJob.map((job) => resolvedShadesOf(job).map((resolved) => rigInput(resolved)));

function onAnEye(lift: CordLockLift): boolean {
  return lift.eyes.some(({ xMm }) => Math.abs(xMm - lift.seat.xMm) < 1e-6);
}

describe("the lift of any valid shade", () => {
  test("is made of finite numbers, none negative, and finds what is wrong", () => {
    fc.assert(
      fc.property(anyInput, (inputs) => {
        for (const input of inputs) {
          const { values: lift, findings } = planned(input);
          expect(notFinite(lift)).toEqual([]);
          for (const cord of lift.cords) {
            expect(Math.min(cord.runMm, cord.tailMm, cord.loadN, cord.pullN)).toBeGreaterThanOrEqual(0);
            expect(cord.cutMm).toBeGreaterThanOrEqual(cord.lengthMm - 1e-5);
          }
          for (const { text } of findings) expect(text).not.toMatch(/NaN|Infinity|undefined/);
        }
      }),
      { numRuns: 100 },
    );
  });

  test("has no crossing cords, unless the maker put the lock on an eye", () => {
    fc.assert(
      fc.property(anyInput, (inputs) => {
        for (const input of inputs) {
          const { values: lift, findings } = planned(input);
          if (onAnEye(lift)) continue;
          expect(countCrossings(lift.cords.map(({ path }) => path))).toBe(0);
          expect(findings.map(({ id }) => id)).not.toContain("rig.check-failed");
        }
      }),
      { numRuns: 100 },
    );
  });

  test("keeps to the slots: none beyond its capacity where the lock takes the cords", () => {
    fc.assert(
      fc.property(anyInput, (inputs) => {
        for (const input of inputs) {
          const { shade, grid, liftParts } = input;
          const { lock } = liftParts;
          const { values: lift } = planned(input);
          // Too many cords, stated or not, are drawn crowded beside the finding that says so.
          const { perSlot, cordsMax } = lockRoom(lock, shade.cord);
          if (grid.columns.length > cordsMax) continue;
          for (const slot of lift.slots) {
            expect(slot.cords.length).toBeLessThanOrEqual(slot.usable ? perSlot : 0);
          }
        }
      }),
    );
  });

  test("is the mirror image when it is worked on the other side, facing and slots included", () => {
    fc.assert(
      fc.property(anyInput, (inputs) => {
        for (const input of inputs) {
          const right = planned(workedOn(input, "right"));
          const left = planned(workedOn(input, "left"));
          if (onAnEye(right.values)) continue;
          expectSameLift(mirrorImage(left.values, input), right.values);
          expect(left.findings.map(({ id }) => id)).toEqual(right.findings.map(({ id }) => id));
        }
      }),
      { numRuns: 60 },
    );
  });

  test("pulls no less with more friction", () => {
    fc.assert(
      fc.property(anyInput, fc.double({ min: 0, max: 0.4, noNaN: true }), (inputs, friction) => {
        for (const input of inputs) {
          const pulls = [friction, friction + 0.1].map(
            (one) => planned(withFriction(input, one)).values.pullN,
          );
          expect(pulls[1]).toBeGreaterThanOrEqual((pulls[0] ?? 0) * (1 - 1e-6));
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** Paths of every number that is not finite. */
function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}/${key}`));
}

/** The same shade worked on that side; a lock fixed by the maker goes to the mirrored place. */
function workedOn(input: LockInput, side: "left" | "right"): LockInput {
  const { lift } = input.shade.making;
  const placed = lift.seatMm === undefined ? undefined : Math.min(lift.seatMm, input.size.finishedWidthMm);
  const seatMm = placed === undefined || side === "right" ? placed : input.size.finishedWidthMm - placed;
  const making = {
    ...input.shade.making,
    lift: { ...lift, controlSide: side, ...(seatMm === undefined ? {} : { seatMm }) },
  };
  // The mirror image of a sloping head slopes the other way.
  const { head } = input.size;
  const turned =
    head === undefined || side === "right"
      ? {}
      : { head: { ...head, high: head.high === "left" ? ("right" as const) : ("left" as const) } };
  return { ...input, size: { ...input.size, ...turned }, shade: { ...input.shade, making } };
}

function withFriction(input: LockInput, friction: number): LockInput {
  return { ...input, shade: { ...input.shade, eye: { ...input.shade.eye, friction } } };
}

function mirrorImage(lift: CordLockLift, { size, grid }: LockInput): CordLockLift {
  const across = (xMm: number) => size.finishedWidthMm - xMm;
  const point = ({ xMm, zMm }: { xMm: number; zMm: number }) => ({ xMm: across(xMm), zMm });
  const number = (n: number) => grid.columns.length + 1 - n;
  const side = (one: "left" | "right"): "left" | "right" => (one === "left" ? "right" : "left");
  return {
    ...lift,
    controlSide: side(lift.controlSide),
    slots: lift.slots.map((slot) => ({ ...slot, cords: slot.cords.map(number) })),
    seat: {
      ...lift.seat,
      xMm: across(lift.seat.xMm),
      facing: side(lift.seat.facing),
      feasibleMm: lift.seat.feasibleMm
        .map(([from, to]): [number, number] => [across(to), across(from)])
        .sort((a, b) => a[0] - b[0]),
      screwsMm: lift.seat.screwsMm.map(point).sort((a, b) => a.zMm - b.zMm || a.xMm - b.xMm),
    },
    eyes: lift.eyes.map(point).reverse(),
    cords: lift.cords
      .map((cord) => ({
        ...cord,
        number: number(cord.number),
        columnX: across(cord.columnX),
        entersFrom: side(cord.entersFrom),
        path: cord.path.map(point),
        eyes: cord.eyes.map(number),
      }))
      .reverse(),
    threading: lift.threading.map(number),
    course: {
      ...lift.course,
      shares: PULL_ORDER.flatMap((what) =>
        lift.course.shares
          .filter((place) => place.what === what)
          .map((place) => (place.eye === undefined ? place : { ...place, eye: number(place.eye) }))
          .sort((a, b) => (a.eye ?? 0) - (b.eye ?? 0)),
      ),
    },
    ...(lift.topRail && {
      topRail: {
        ...lift.topRail,
        side: side(lift.topRail.side),
        seat: {
          ...lift.topRail.seat,
          xMm: across(lift.topRail.seat.xMm),
          screwsMm: lift.topRail.seat.screwsMm.map(point).sort((a, b) => a.zMm - b.zMm || a.xMm - b.xMm),
        },
        eyes: lift.topRail.eyes.map(point).reverse(),
        cords: lift.topRail.cords
          .map((cord) => ({
            ...cord,
            column: number(cord.column),
            xMm: across(cord.xMm),
            path: cord.path.map(point),
          }))
          .reverse(),
      },
    }),
  };
}

const PULL_ORDER = ["weight", "own-eye", "passed-eye", "roller"];

/** Everything alike: words and counts exactly, lengths to a hundredth of a millimetre (one ruler mark for cuts). */
function expectSameLift(one: unknown, other: unknown, path = "lift"): void {
  if (typeof one === "number" && typeof other === "number") {
    const tolerance = /cutMm|cordTotalMm/.test(path) ? 60 * 3.2 : 0.01;
    expectNear(one, other, tolerance, path);
  } else if (typeof one === "object" && one !== null && typeof other === "object" && other !== null) {
    expect(Object.keys(one), path).toEqual(Object.keys(other));
    for (const [key, inner] of Object.entries(one)) {
      expectSameLift(inner, (other as Record<string, unknown>)[key], `${path}/${key}`);
    }
  } else expect(one, path).toEqual(other);
}

describe("a plain shade, 36 × 60 in, worked on the right", () => {
  const resolved = resolvedWith({
    opening: { widthsMm: [914.4], heightsMm: [1524], sillAboveFloorMm: 762 },
    shade: { mount: "to-size" },
  });
  const input = rigInput(resolved);
  const { values: lift, workings } = plannedLock(input);

  test("five cords: four from the left, the edge cord from the right, far ones nearest the wall", () => {
    expect(lift.lockId).toBe("lock-4-slot");
    expect(lift.cords.map(({ entersFrom }) => entersFrom)).toEqual(["left", "left", "left", "left", "right"]);
    expect(lift.slots.map(({ cords }) => cords)).toEqual([[1, 2], [3], [4], [5]]);
    expect(lift.threading).toEqual([1, 2, 3, 4, 5]);
    expect(lift.seat).toMatchObject({ kind: "between", forced: false, facing: "right" });
  });

  test("each cord passes every eye between its own and the lock", () => {
    expect(lift.cords.map(({ eyes }) => eyes)).toEqual([[1, 2, 3, 4], [2, 3, 4], [3, 4], [4], [5]]);
  });

  test("each length is rise + run + tail + knots, raised to the ruler", () => {
    const rise = 1524 - (input.grid.rows[0]?.fromHemMm ?? 0);
    for (const cord of lift.cords) {
      const length = rise + Math.abs(cord.columnX - lift.seat.xMm) + 1524 / 2 + 152.4;
      expectNear(cord.lengthMm, length, 1e-9);
      expectNear(cord.cutMm, upToMark(length, "1/8 in"), 1e-9);
    }
    expectNear(
      lift.cordTotalMm,
      lift.cords.reduce((sum, { cutMm }) => sum + cutMm, 0),
      1e-9,
    );
  });

  test("a quarter turn at the eye and the roller alone raise the pull by e^(μπ/2) / 0.917, the rest adds a little", () => {
    const least = Math.exp((0.25 * Math.PI) / 2) / 0.917;
    for (const { loadN, pullN } of lift.cords) {
      expect(pullN / loadN).toBeGreaterThanOrEqual(least - 1e-12);
      expect(pullN / loadN).toBeLessThan(least * 1.11);
    }
  });

  test("the tail ends half way down and sinks by the travel", () => {
    const underLock = 762 + 1524 - 19.05 - 24;
    expectNear(lift.tailEndAboveFloorLoweredMm ?? Number.NaN, underLock - 762, 1e-9);
    expectNear(lift.tailRaisedMm - lift.tailLoweredMm, input.grid.travelMm, 1e-9);
  });

  test("the seat’s figures bound the place that was chosen", () => {
    const figure = (id: string) => workings.find((one) => figureId(one) === id)?.value ?? Number.NaN;
    const fromEdge = 914.4 - lift.seat.xMm;
    expect(fromEdge).toBeGreaterThanOrEqual(figure("rig.seat-from"));
    expect(fromEdge).toBeLessThanOrEqual(figure("rig.seat-to"));
    expectNear(lift.seat.feasibleMm[0]?.[1] ?? Number.NaN, 914.4 - figure("rig.seat-from"), 1e-9);
  });

  test("locks that were passed over say why", () => {
    const eight = rigInput(
      resolvedWith({ shade: { mount: "to-size", making: { columns: { count: 8 } } } }),
      PLAIN_MASS,
    );
    expect(planned(eight).values.refusedLocks).toEqual([
      {
        lockId: "lock-4-slot",
        lockName: "Four-slot lock",
        reason: "takes at most 7 cords; this shade has 8",
      },
    ]);
  });
});
