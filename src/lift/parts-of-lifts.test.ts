import { describe, expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../test/hand-shade.ts";
import { jobWith, resolvedWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { plannedLock, rigInput } from "../../test/rig-inputs.ts";
import { saidOf } from "../../test/said.ts";
import { LIFT_KINDS } from "../job/index.ts";
import { measure } from "../measure/index.ts";
import { plan } from "../plan/index.ts";
import { chooseLiftParts } from "./choose-lift-parts.ts";
import { overEyes } from "./course/over-eyes.ts";
import { planCleatCourse, planTubeCourse } from "./course/plan-course.ts";
import { judgePull } from "./judge-pull.ts";
import { cleatInput, type LiftInput, lockInput, tubeInput } from "./lift-input.ts";

const METRIC = { units: { system: "metric", ruler: "1 mm" } } as const;

it("what takes up the cords is named by its height below the board, whatever the lift", () => {
  const shade = resolvedWith({}, METRIC);
  const { values: size } = measure(shade);
  const columns = [100, 500, 800].map((xMm, i) => ({ number: i + 1, xMm }));
  for (const liftKind of LIFT_KINDS) {
    const { label, heightMm, kind } = chooseLiftParts({
      shade: { ...shade, liftKind },
      size,
      columns,
    } as never).values;
    expect(kind).toBe(liftKind);
    expect(label, liftKind).toMatch(/\bheight\b/);
    expect(heightMm, liftKind).toBeGreaterThan(0);
  }
  // Of two eyes the larger is the lowest part.
  for (const [eyeMm, turnMm] of [
    [12, 16],
    [20, 8],
  ] as const) {
    const eyes = {
      eye: { ...shade.eye, outsideDiameterMm: eyeMm },
      turnEye: { ...shade.turnEye, outsideDiameterMm: turnMm },
    };
    const { heightMm } = chooseLiftParts({
      shade: { ...shade, ...eyes, liftKind: "cleat" },
      size,
      columns,
    } as never).values;
    expect(heightMm).toBe(Math.max(eyeMm, turnMm));
  }
});

it("parts of another lift are a bug", () => {
  const of = (takeUp: string, kind: string) => ({ liftParts: { takeUp, kind } }) as unknown as LiftInput;
  expect(() => lockInput(of("tube", "motor"))).toThrow("invalid liftParts: motor has no lock");
  expect(() => cleatInput(of("lock", "cord-lock"))).toThrow("invalid liftParts: cord-lock has no cleat");
  expect(() => tubeInput(of("cleat", "cleat"))).toThrow("invalid liftParts: cleat has no tube");
});

describe("forces on the way up", () => {
  it("a cord that hangs slack takes no part in the hold", () => {
    const at = overEyes(
      [
        { loadN: 0, pullN: 0 },
        { loadN: 6, pullN: 9 },
      ],
      6,
      9,
    );
    expect(at(6)).toEqual({ pullN: 9, holdN: 4 });
  });

  it("a shade that gathers nothing has one height: as it hangs", () => {
    const { resolved, grid, form, mass } = handShade({ job: METRIC });
    const still = { ...grid, travelMm: 0 };
    const cords = [{ number: 1, loadN: 10, pullN: 20, eyesRad: 0, riseMm: 900, runMm: 0 }];
    const course = planCleatCourse(
      {
        shade: resolved,
        grid: still,
        form,
        mass: { ...mass, parts: [{ part: "bar", label: "Bar", massKg: 1 }] },
      } as never,
      { cords, heldN: 10, pullN: 20 } as never,
    ).values;
    expect(course.heights).toHaveLength(1);
    const [only] = course.heights;
    expect(only).toMatchObject({ liftMm: 0, raise: 0 });
    expectNear(only?.heldN ?? 0, 9.80665, 1e-9);
    expectNear(only?.pullN ?? 0, 2 * 9.80665, 1e-9);
  });

  it("on a tube the arm grows with the cord wound up: its square by the share of the travel", () => {
    const { resolved, grid, form, mass } = handShade({ job: METRIC });
    const bar = { ...mass, parts: [{ part: "bar", label: "Bar", massKg: 1 }] };
    const { heights, shares } = planTubeCourse(
      { shade: resolved, grid, form, mass: bar } as never,
      { cords: [], woundLoweredMm: 10, woundRaisedMm: 20 } as never,
      (torqueNm, radiusMm) => ({ pullN: radiusMm, holdN: torqueNm }),
    ).values;
    // Nothing runs over eyes.
    expect(shares).toEqual([]);
    expect(heights.length).toBeGreaterThan(4);
    for (const { raise, liftMm, torqueNm = 0, pullN, holdN } of heights) {
      expectNear(raise, liftMm / grid.travelMm, 1e-12);
      expectNear(pullN ** 2, 100 + raise * 300, 1e-9);
      expectNear(torqueNm, (9.80665 * pullN) / 1000, 1e-9);
      expect(holdN).toBe(torqueNm);
    }
  });
});

/** What a lift states, and the figure that works it out. */
const STATED: Record<string, string> = {
  ...{ heldN: "lift.held", pullN: "lift.pull", cordTotalMm: "rig.cord-total", tailLoweredMm: "rig.tail" },
  ...{
    tailRaisedMm: "rig.tail-raised",
    toCleatMm: "rig.to-cleat",
    windMm: "rig.cord-to-wind",
    turns: "lift.turns",
  },
  ...{
    heldLoweredN: "lift.held-lowered",
    torqueLoweredNm: "lift.torque-lowered",
    torqueRaisedNm: "lift.torque-raised",
  },
  ...{ woundLoweredMm: "lift.wound-lowered", woundRaisedMm: "lift.wound-raised", bandN: "lift.spring-band" },
  ...{ handTurns: "lift.hand-turns", loopDropMm: "rig.loop", loopPerimeterMm: "rig.loop-perimeter" },
  ...{ loopTravelMm: "rig.loop-travel", wandMm: "rig.wand", raiseSeconds: "lift.raise-time" },
};

it("works out what it states: each figure once, with the value that the lift has", () => {
  for (const kind of LIFT_KINDS) {
    const [shade] = plan(
      jobWith(
        {
          opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 800 },
          shade: { mount: "to-size", making: { lift: { kind, rearCords: "ring-locked" } } },
        },
        METRIC,
      ),
    ).shades;
    const { lift, workings } = shade ?? {};
    if (lift === undefined || workings === undefined) throw new Error("invalid test job: no shade");
    const workedOut = (id: string) => workings.filter((one) => one.id === id).map(({ value }) => value);
    for (const [key, value] of Object.entries(lift)) {
      const id = kind === "motor" && key === "pullN" ? undefined : STATED[key];
      if (id !== undefined) expect(workedOut(id), `${kind}: ${key}`).toEqual([value]);
    }
    expect(workedOut("lift.level"), kind).toEqual([lift.course.levelMm]);
    expect(workedOut("lift.heaviest-cord"), kind).toEqual([
      Math.max(...lift.cords.map(({ loadN }) => loadN)),
    ]);
    for (const id of ["lift.strength-running", "lift.strength-knot", "rig.woven-sleeve"])
      expect(workedOut(id), `${kind}: ${id}`).toHaveLength(1);
    for (const { number, lengthMm } of lift.cords)
      expect(workedOut(`rig.cord-${number}-length`), kind).toEqual([lengthMm]);
    if (kind === "cord-lock") {
      expect(workedOut("lift.pull-with-pulleys")).toEqual([lift.course.withPulleysN]);
      for (const id of [
        "lift.slots",
        "lift.cords-per-slot",
        "rig.seat-from",
        "rig.eye-level",
        "rig.lock-level",
      ])
        expect(workedOut(id), id).toHaveLength(1);
    }
    if (lift.takeUp === "tube")
      for (const id of ["lift.tube-bend", "lift.tube-twist"]) expect(workedOut(id), kind).toHaveLength(1);
  }
});

it("a shade that has its pulley already is not offered it again", () => {
  const { resolved } = handShade({ job: METRIC });
  const pulley = (id: string) => ({ id, name: `Pulley ${id}`, outsideDiameterMm: 16, pulleyShare: 0.9 });
  const plainEye = { id: "plain", name: "Plain", outsideDiameterMm: 16 };
  const offered = (eyeId: string, eyes: object[]) =>
    saidOf(
      judgePull({ ...resolved, eye: pulley(eyeId), parts: { ...NO_PARTS, eyes } } as never, {
        pullN: 50,
        heldN: 30,
        takeUp: "lock",
        course: { heights: [], shares: [], withPulleysN: 40 },
      }),
    )[0]?.remedies;
  expect(offered("own", [plainEye, pulley("own")])).toEqual([]);
  expect(offered("own", [plainEye, pulley("own"), pulley("a"), pulley("b")])).toEqual([
    ["Use “Pulley a” in place of the eyes", "lift/eye", "a"],
  ]);
});

describe("cords on their way", () => {
  it("pass every eye between their own and the lock, and are threaded from the wall outwards", () => {
    for (const controlSide of ["left", "right"] as const) {
      const shade = resolvedWith(
        {
          opening: { widthsMm: [1200], heightsMm: [1500] },
          shade: { mount: "to-size", making: { lift: { controlSide } } },
        },
        METRIC,
      );
      const { values: lift } = plannedLock(rigInput(shade));
      const columns = lift.cords.map(({ columnX }) => columnX);
      for (const { number, eyes, columnX } of lift.cords) {
        expect(eyes[0]).toBe(number);
        const passed = columns.flatMap((x, i) => {
          const isBetween = (x - columnX) * (x - lift.seat.xMm) < 0;
          return isBetween ? [i + 1] : [];
        });
        expect([...eyes.slice(1)].sort((a, b) => a - b)).toEqual(passed);
      }
      const place = (number: number) => {
        const cord = lift.cords[number - 1];
        return 100 * (cord?.slot ?? 0) + (cord?.placeInSlot ?? 0);
      };
      expect([...lift.threading].sort((a, b) => a - b)).toEqual(lift.cords.map(({ number }) => number));
      expect(lift.threading.map(place)).toEqual(lift.threading.map(place).sort((a, b) => a - b));
    }
  });

  it("down to a cleat may be of any cord: stronger and stiffer ones are offered whatever a lock would take", () => {
    const cord = (id: string, breakingN: number, diameterMm = 1.4) => ({
      id,
      name: `Cord ${id}`,
      diameterMm,
      breakingN,
    });
    const [shade] = plan(
      jobWith(
        {
          opening: { widthsMm: [1800], heightsMm: [2400], sillAboveFloorMm: 400 },
          shade: { mount: "to-size", making: { lift: { kind: "cleat", cord: "weak" } } },
        },
        { ...METRIC, hardware: { cords: [cord("weak", 20), cord("thick", 9000, 5)] } },
      ),
    ).shades;
    for (const id of ["lift.cord-too-weak", "lift.stretch-out-of-level"]) {
      const found = shade?.findings.find((one) => one.id === id);
      expect(
        found?.remedies.map(({ label }) => label),
        id,
      ).toContain("Use “Cord thick”");
    }
  });

  it("over a lock must be of a cord that the lock takes", () => {
    const cord = (id: string, diameterMm: number, breakingN: number) => ({
      id,
      name: `Cord ${id}`,
      diameterMm,
      breakingN,
    });
    const lock = {
      ...{ id: "own", name: "Own lock", housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
      ...{ dividerWires: 7, cordsMax: 16, cordMinMm: 1.4, cordMaxMm: 1.8 },
    };
    const [shade] = plan(
      jobWith(
        {
          opening: { widthsMm: [1800], heightsMm: [2400], sillAboveFloorMm: 400 },
          shade: { mount: "to-size", making: { lift: { kind: "cord-lock", lock: "own", cord: "weak" } } },
        },
        {
          ...METRIC,
          hardware: {
            locks: [lock],
            cords: [cord("weak", 1.4, 20), cord("thick", 5, 9000), cord("good", 1.8, 8000)],
          },
        },
      ),
    ).shades;
    for (const id of ["lift.cord-too-weak", "lift.stretch-out-of-level"]) {
      const labels = shade?.findings.find((one) => one.id === id)?.remedies.map(({ label }) => label);
      expect(labels, id).toContain("Use “Cord good”");
      expect(labels, id).not.toContain("Use “Cord thick”");
    }
  });
});
