import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { jobWith, resolvedWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { capstanRatio } from "../../mechanics/index.ts";
import { plan } from "../../plan/index.ts";
import type { CordLockLift, Mass, TubeLift } from "../../shade-plan/index.ts";
import { GRAVITY, inches } from "../../units/index.ts";
import { courseAt } from "./course.ts";
import type { LiftCords } from "./lift-cords.ts";
import { cordGeometry } from "./lift-geometry.ts";
import { leastShare } from "./rear-cords.ts";

/** Every lift of a plan can be reviewed as it stands: this compiles or it does not. */
const asCords = (lift: CordLockLift | TubeLift): LiftCords => lift;

const MASS: Mass = {
  parts: [
    { part: "face", label: "Face", massKg: 0.6 },
    { part: "bar", label: "Bar", massKg: 0.4 },
    { part: "rings", label: "Rings", massKg: 0.07 },
  ],
  totalKg: 1.07,
  clothGsm: 370,
  onBoardKg: 0,
};
const { resolved, ...made } = handShade();
const shade = { ...made, shade: resolved, mass: MASS };

it("hangs where the head is over the lock: a slope that falls 20 in over 36 (similar triangles)", () => {
  const head = { kind: "angled", fallMm: inches(20), high: "left" } as const;
  const sloped = cordGeometry({ ...shade, size: { ...shade.size, head } }, asCords(shade.lift));
  const level = cordGeometry(shade, asCords(shade.lift));
  const lower = (sloped.pulls[0]?.exitBelowTopMm ?? 0) - (level.pulls[0]?.exitBelowTopMm ?? 0);
  expectNear(lower, (inches(20) * shade.lift.seat.xMm) / inches(36), 1e-6);
});

describe.each(["cord-lock", "cleat", "spring"] as const)("the cords of a top rail over a %s", (kind) => {
  it("hang from the rail’s own lock, under the head as it is there: a slope that falls 400 mm over 1200 (similar triangles)", () => {
    const window: Parameters<typeof resolvedWith>[0] = {
      opening: {
        widthsMm: [1200],
        heightsMm: [1500],
        sillAboveFloorMm: 900,
        head: { kind: "angled", fallMm: 400, high: "right" },
      },
      shade: { mount: "to-size", making: { lift: { kind }, fold: { topDropMm: 400 } } },
    };
    const [planned] = plan(jobWith(window)).shades;
    const read = resolvedWith(window);
    const rail = planned?.lift.topRail;
    const own = read.locks.find(({ id }) => id === rail?.lockId);
    if (planned === undefined || rail === undefined || own === undefined) throw new Error("no rail");
    const [pull] = cordGeometry({ ...planned, shade: read }, planned.lift).pulls.filter(
      ({ raises }) => raises === "top-rail",
    );
    const headMm = (400 * (1200 - rail.seat.xMm)) / 1200;
    expectNear(pull?.exitBelowTopMm ?? 0, headMm + read.board.thicknessMm + own.housingHeightMm, 1e-6);
  });
});

describe("the cords of a top rail, which rises and falls by itself", () => {
  const rail = (cords: number) => {
    const topRail = {
      ...{ side: "left", tailDownMm: 500, tailUpMm: 900, housingHeightMm: 24, dropMm: 400 },
      ...{ cords: Array.from({ length: cords }), eyes: [{ xMm: inches(2) }, { xMm: inches(34) }] },
      seat: { xMm: inches(10) },
    } as const;
    return cordGeometry(shade, { kind: "spring", topRail } as LiftCords);
  };

  it("hang as long as with the rail up at every height of the shade, joined ones as much from their connector", () => {
    const [pull] = rail(2).pulls;
    if (pull?.joinedMm === undefined) throw new Error("invalid geometry: not joined");
    for (const raise of [0, 0.5, 1]) {
      expectNear(courseAt(pull.lengthMm, raise), 900, 1e-9);
      // 3 in below the lock with the rail down, and 400 mm further with it up.
      expectNear(courseAt(pull.joinedMm, raise), inches(3) + 400, 1e-9);
    }
    expect(pull.raises).toBe("top-rail");
    expect(rail(1).pulls[0]?.joinedMm).toBeUndefined();
  });

  it("run along the board between its eyes and its lock, and bare from the rail to the board", () => {
    expect(rail(2).railSpansMm?.map((mm) => Math.round(mm / inches(1)))).toEqual([8, 24]);
    const spans = rail(2).rear?.spans ?? [];
    const bare = cordGeometry(shade, { kind: "spring" }).rear?.spans ?? [];
    spans.forEach((span, i) => {
      expectNear(span.cordMm - (bare[i]?.cordMm ?? 0), span.top ? 400 : 0, 1e-9);
    });
  });
});

describe("run X1 on a cord lock", () => {
  const geometry = cordGeometry(shade, asCords(shade.lift));

  it("hangs its tail from the underside of the lock, and joins it 3 in below", () => {
    const [pull] = geometry.pulls;
    expect(geometry.pulls).toHaveLength(1);
    expect(pull).toMatchObject({ count: 5, exitBelowTopMm: resolved.board.thicknessMm + 24 });
    if (pull?.joinedMm === undefined) throw new Error("invalid geometry: not joined");
    expectNear(courseAt(pull.lengthMm, 0.5), inches(30 + 26.6), 1e-6);
    expectNear(courseAt(pull.joinedMm, 1), inches(3 + 53.2), 1e-6);
  });

  it("has six stretches of 7.6 in and one from the top ring to the board, which together gather the travel", () => {
    const spans = geometry.rear?.spans ?? [];
    expect(spans).toHaveLength(7);
    for (const { cordMm } of spans.slice(0, 6)) expectNear(cordMm, inches(7.6), 1e-6);
    expectNear(spans[6]?.cordMm ?? 0, inches(10.6) - resolved.board.thicknessMm, 1e-6);
    expectNear(
      spans.reduce((sum, span) => sum + span.gathersMm, 0),
      geometry.travelMm,
      1e-6,
    );
  });

  it("runs along the board from eye to eye, 8 in apart but for the lock between the last two", () => {
    const spans = geometry.rear?.boardSpansMm ?? [];
    const lockIn = shade.lift.seat.xMm / inches(1);
    const inch = [8, 8, 8, lockIn - 26, 34 - lockIn];
    expect(spans).toHaveLength(5);
    spans.forEach((span, i) => {
      expectNear(span, inches(inch[i] ?? 0), 1e-6);
    });
  });

  it("carries bar, one row of rings, bottom section and half a fold as the first fold begins", () => {
    // 0.4 + 0.07/7 + 0.6 · (3.8 + 7.6/2)/60 = 0.486 kg.
    expectNear(geometry.rear?.heldN[0] ?? 0, GRAVITY * (0.4 + 0.01 + (0.6 * 7.6) / 60), 1e-6);
  });
});

describe("the least loaded cord", () => {
  it("is that of the smaller share: three equal bays give 0.4, 1.1, 1.1, 0.4 under a stiff bar (Clapeyron)", () => {
    // Limp cloth gives the outer cords half a bay each, 0.5 of 3; the bar 0.4 of 3.
    expectNear(leastShare([0, 100, 200, 300], 300), 0.4 / 3, 1e-9);
  });

  it("is all of it on one cord", () => {
    expect(leastShare([100], 300)).toBe(1);
  });
});

it("a shade without rows or without columns has no cord up the back", () => {
  const over = (grid: object) =>
    cordGeometry({ ...shade, grid: { ...shade.grid, ...grid } }, { kind: "spring" });
  expect(over({}).rear).toBeDefined();
  expect(over({ rows: [] })).not.toHaveProperty("rear");
  expect(over({ columns: [] })).not.toHaveProperty("rear");
});

describe("other lifts", () => {
  it("a spring: nothing hangs, and its spools pay out", () => {
    const geometry = cordGeometry(shade, { kind: "spring" });
    expect(geometry.pulls).toEqual([]);
    expect(geometry.rear).toMatchObject({ boardSpansMm: [], top: { holds: false }, guide: "open" });
    expect(capstanRatio(geometry.rear?.friction ?? 0, 0)).toBe(1);
  });

  it("a loop: its drop, its way around, and the tensioner that holds it where nothing else is said", () => {
    const lift = {
      kind: "tube-loop",
      loopDropMm: 700,
      loopPerimeterMm: 1450,
      loopExitBelowTopMm: 40,
    } as const;
    expect(cordGeometry(shade, lift).loop).toEqual({
      dropMm: 700,
      perimeterMm: 1450,
      device: "tensioner",
      exitBelowTopMm: 40,
    });
  });

  it("a wand and a motor: rear cords alone, up to the spool below the board", () => {
    const wand = cordGeometry(shade, { kind: "tube-wand", wandMm: 600, tube: { axisMm: 25 } });
    const motor = cordGeometry(shade, { kind: "motor", rearCords: "enclosed" });
    expect(wand.wandMm).toBe(600);
    const last = (geometry: typeof wand) => geometry.rear?.spans.at(-1)?.cordMm ?? 0;
    expectNear(last(motor) - last(wand), 25, 1e-9);
    expect(motor.rear).toMatchObject({ guide: "enclosed", top: { holds: true } });
  });

  it("follows the maker’s setting of the rear cords where the lift says nothing", () => {
    const { resolved: sleeved } = handShade({
      window: { shade: { making: { lift: { rearCords: "enclosed" } } } },
    });
    expect(cordGeometry({ ...shade, shade: sleeved }, { kind: "motor" }).rear?.guide).toBe("enclosed");
  });
});
