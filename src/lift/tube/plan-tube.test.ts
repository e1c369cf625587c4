import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyJob } from "../../../test/arbitrary-job.ts";
import { resolvedWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { PLAIN_MASS, plannedTube, resolvedShadesOf, tubeInput } from "../../../test/rig-inputs.ts";
import { type Drive, LIFT_KINDS, LIFT_TRAITS, REAR_GUIDES, type ResolvedShade } from "../../job/index.ts";
import type { Mass, TubeLift } from "../../shade-plan/index.ts";
import { GRAVITY, inches } from "../../units/index.ts";
import type { TubeInput } from "../lift-input.ts";
import type { TubeKind } from "./tube-lift-parts.ts";

const KINDS = LIFT_KINDS.filter((kind): kind is TubeKind => LIFT_TRAITS[kind].takeUp === "tube");

const planned = (input: TubeInput) => plannedTube(input);
const ids = (input: TubeInput) => planned(input).findings.map(({ id }) => id);

/** A shade that a workroom makes, with any of the lifts. */
const usual = fc.record({
  kind: fc.constantFrom(...KINDS),
  rearCords: fc.constantFrom(...REAR_GUIDES),
  widthMm: fc.integer({ min: 500, max: 2400 }),
  heightMm: fc.integer({ min: 700, max: 2600 }),
  tube: fc.constantFrom("tube-12", "tube-25"),
  system: fc.constantFrom("imperial" as const, "metric" as const),
});
type Usual = typeof usual extends fc.Arbitrary<infer T> ? T : never;

function usualResolved(
  { rearCords, widthMm, heightMm, tube, system }: Usual,
  side: "left" | "right" = "right",
): ResolvedShade {
  return resolvedWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [heightMm], sillAboveFloorMm: 700 },
      shade: { mount: "to-size", making: { lift: { rearCords, tube, controlSide: side } } },
    },
    { units: { system, ruler: system === "metric" ? "1 mm" : "1/8 in" } },
  );
}

interface Part {
  what: string;
  from: number;
  to: number;
}

/** Stretches of the board that the parts take up, from the drawing alone. */
function partsOf({ spools, supports, supportLengthMm, drive }: TubeLift): Part[] {
  const part = (what: string, x: number, length: number) => ({
    what,
    from: x - length / 2,
    to: x + length / 2,
  });
  return [
    ...spools.map(({ number, xMm, lengthMm }) => part(`spool ${number}`, xMm, lengthMm)),
    ...supports.map(({ number, xMm }) => part(`support ${number}`, xMm, supportLengthMm)),
    part("drive", drive.xMm, drive.lengthMm),
  ].sort((a, b) => a.from - b.from);
}

describe("parts along the board", () => {
  test("lie clear of each other and on the board, unless a finding says that they do not", () => {
    fc.assert(
      fc.property(anyJob, fc.constantFrom(...KINDS), (job, kind) => {
        for (const resolved of resolvedShadesOf(job)) {
          const input = tubeInput(resolved, kind);
          const { values: lift, findings } = planned(input);
          const said = findings.some(({ id }) =>
            ["rig.no-drive-place", "rig.spools-touch", "rig.spool-off-board", "rig.supports"].includes(id),
          );
          if (said) continue;
          const parts = partsOf(lift);
          parts.forEach((one, i) => {
            const before = parts[i - 1];
            if (before) expect(one.from, `${before.what}, ${one.what}`).toBeGreaterThan(before.to - 1e-3);
          });
          const half = input.size.boardLengthMm / 2;
          const middle = input.size.finishedWidthMm / 2;
          expect(parts[0]?.from ?? 0).toBeGreaterThan(middle - half - 1e-3);
          expect(Math.max(...parts.map(({ to }) => to))).toBeLessThan(middle + half + 1e-3);
          expect(findings.map(({ id }) => id)).not.toContain("rig.check-failed");
        }
      }),
      { numRuns: 200 },
    );
  });

  test("of a usual shade find their places, and no tube runs free for more than 600 mm", () => {
    fc.assert(
      fc.property(usual, (shade) => {
        const input = tubeInput(usualResolved(shade), shade.kind);
        const { values: lift, findings } = planned(input);
        const stops = findings.filter(({ severity }) => severity === "stop");
        // A motor is longer than the bays of a narrow shade: then there is a way out to press.
        expect(stops.map(({ id }) => id).filter((id) => id !== "rig.no-drive-place")).toEqual([]);
        for (const { remedies } of stops) expect(remedies.length).toBeGreaterThan(0);
        fc.pre(stops.length === 0);
        const face = lift.drive.lengthMm / 2;
        const bearings = [
          ...lift.supports.map(({ xMm }) => xMm),
          lift.drive.xMm - face,
          lift.drive.xMm + face,
        ].sort((a, b) => a - b);
        bearings.forEach((at, i) => {
          if (i > 0)
            expect(at - (bearings[i - 1] ?? at)).toBeLessThanOrEqual(
              Math.max(600, lift.drive.lengthMm) + 0.01,
            );
        });
      }),
      { numRuns: 200 },
    );
  });

  test("worked on the left everything is the mirror image", () => {
    fc.assert(
      fc.property(usual, (shade) => {
        const right = planned(tubeInput(usualResolved(shade), shade.kind)).values;
        const left = planned(tubeInput(usualResolved(shade, "left"), shade.kind)).values;
        const flip = (x: number) => shade.widthMm - x;
        const places = (lift: TubeLift, map: (x: number) => number) =>
          [
            ...lift.supports.map(({ xMm }) => map(xMm)),
            ...lift.drive.screwsMm.map(({ xMm }) => map(xMm)),
            map(lift.drive.xMm),
            map(lift.tube.fromMm),
            map(lift.tube.toMm),
          ].sort((a, b) => a - b);
        const [ours, theirs] = [places(right, (x) => x), places(left, flip)];
        expect(theirs.length).toBe(ours.length);
        // The finished width is a whole mark of the ruler off at most, and marks are taken from the control side.
        ours.forEach((at, i) => {
          expectNear(theirs[i] ?? Number.NaN, at, 0.01);
        });
        // Beams summed from the other end differ in their last digit.
        expectNear(left.stiffness?.bendMm ?? -1, right.stiffness?.bendMm ?? -1, 1e-9);
        expectNear(left.stiffness?.twistMm ?? -1, right.stiffness?.twistMm ?? -1, 1e-9);
        expect({ ...left, ...SIDED }).toEqual({ ...right, ...SIDED });
      }),
      { numRuns: 100 },
    );
  });

  /** What belongs to a side; all else must be alike. */
  const SIDED = { controlSide: 0, cords: 0, spools: 0, supports: 0, drive: 0, tube: 0, stiffness: 0 };
});

describe("cords of a tube", () => {
  test("none hangs free: no tail and no eye, in any lift of any shade", () => {
    fc.assert(
      fc.property(anyJob, fc.constantFrom(...KINDS), (job, kind) => {
        for (const resolved of resolvedShadesOf(job)) {
          const { values: lift } = planned(tubeInput(resolved, kind));
          expect(lift.eyes).toEqual([]);
          expect(JSON.stringify({ ...lift, topRail: undefined })).not.toMatch(/tail/i);
          for (const cord of lift.cords) {
            expectNear(cord.lengthMm, cord.riseMm + cord.wrapsMm + cord.knotsMm, 1e-6);
            expect(cord.cutMm).toBeGreaterThanOrEqual(cord.lengthMm - 1e-3);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  test("leave two or three turns on the spool when the shade is down (common practice)", () => {
    const { values: lift } = planned(tubeInput(resolvedWith({}), "tube-loop"));
    expect(lift.wrapsLeft).toBeGreaterThanOrEqual(2);
    // 3 turns on a core of 20 mm under a cord of 1.4 mm: 3 π 21.4 mm.
    expectNear(lift.cords[0]?.wrapsMm ?? 0, 3 * Math.PI * 21.4, 1e-9);
  });

  test("wound up they take in just the travel: mean circumference times turns, by the trapezoid", () => {
    fc.assert(
      fc.property(usual, (shade) => {
        const input = tubeInput(usualResolved(shade), shade.kind);
        const { values: lift } = planned(input);
        // dl = ρ dθ and ρ grows evenly with the angle, so the trapezoid is exact.
        const woundMm = Math.PI * (lift.woundLoweredMm + lift.woundRaisedMm) * lift.turns;
        expectNear(woundMm, input.grid.travelMm, 1e-6 * input.grid.travelMm + 1e-6);
      }),
    );
  });
});

function massOf(clothKg: number, barKg: number): Mass {
  return {
    parts: [
      { part: "face", label: "Face", massKg: clothKg },
      { part: "bar", label: "Bar", massKg: barKg },
    ],
    totalKg: clothKg + barKg,
    clothGsm: 300,
    onBoardKg: 0,
  };
}

function withDrive(resolved: ResolvedShade, change: Partial<Drive>, kind: TubeKind): ResolvedShade {
  const [first] = resolved.drives.filter(
    (drive) =>
      drive.kind === { "tube-loop": "loop", "tube-wand": "wand", spring: "spring", motor: "motor" }[kind],
  );
  if (first === undefined) throw new Error(`invalid catalogue: no drive for ${kind}`);
  const drive = { ...first, ...change };
  return { ...resolved, drive, drives: [drive] };
}

describe("torque and pull", () => {
  test("torque is weight times distance in newton metres (NIST SP 811, table 4: N·m), shade of 1.5 kg by hand", () => {
    const input = tubeInput(resolvedWith({ shade: { mount: "to-size" } }), "tube-loop");
    const { values: lift } = planned(input);
    const { grid, size } = input;
    const topFold = grid.topSectionMm - grid.headrailMm;
    const heldN = GRAVITY * (0.5 + 1 - (grid.headrailMm + topFold / 2) / size.finishedLengthMm);
    expectNear(lift.heldN, heldN, 1e-9);
    expectNear(lift.torqueRaisedNm, heldN * (lift.woundRaisedMm / 1000), 1e-12);
    // Lowered, each stretch hangs from the ring above it: the bottom ring carries what is below it.
    const lowered = GRAVITY * (0.5 + grid.bottomSectionMm / size.finishedLengthMm);
    expectNear(lift.torqueLoweredNm, lowered * (lift.woundLoweredMm / 1000), 1e-12);
  });

  test("the hand's work at a loop is the weight's work and the losses, where the torque is even", () => {
    // With a core this wide the cord hardly grows, and a bar alone weighs the same at every height.
    const resolved = { ...resolvedWith({ shade: { mount: "to-size" } }) };
    const tube = { ...resolved.tube, diameterMm: 400, spoolCoreMm: 400, spoolFlangeMm: 450, spoolWindMm: 20 };
    const even = withDrive({ ...resolved, tube }, { efficiency: 0.75, ratio: 2, wheelMm: 40 }, "tube-loop");
    const input = tubeInput(even, "tube-loop", massOf(0, 1));
    const { values: lift } = planned(input);
    if (lift.kind !== "tube-loop") throw new Error("invalid lift");
    const handJ = (lift.pullN * lift.loopTravelMm) / 1000;
    const weightJ = (GRAVITY * input.grid.travelMm) / 1000;
    expectNear(handJ, weightJ / 0.75, 0.01 * handJ);
  });

  const amount = fc.double({ min: 0.05, max: 20, noNaN: true });

  test("a heavier shade never turns easier", () => {
    fc.assert(
      fc.property(usual, amount, amount, amount, (shade, a, b, barKg) => {
        const resolved = usualResolved(shade);
        const lifts = [Math.min(a, b), Math.max(a, b)].map(
          (clothKg) => planned(tubeInput(resolved, shade.kind, massOf(clothKg, barKg))).values,
        );
        const [light, heavy] = lifts;
        if (!light || !heavy) throw new Error("invalid lifts");
        expect(heavy.torqueRaisedNm).toBeGreaterThanOrEqual(light.torqueRaisedNm - 1e-12);
        expect(heavy.torqueLoweredNm).toBeGreaterThanOrEqual(light.torqueLoweredNm - 1e-12);
        if (shade.kind !== "spring") expect(heavy.pullN).toBeGreaterThanOrEqual(light.pullN - 1e-9);
      }),
    );
  });

  test("a higher ratio, a larger wheel or crank and a better drive never pull harder", () => {
    const steps = fc.constantFrom<[TubeKind, (by: number) => Partial<Drive>]>(
      ["tube-loop", (by) => ({ ratio: by })],
      ["tube-loop", (by) => ({ wheelMm: 20 * by })],
      ["tube-wand", (by) => ({ ratio: by })],
      ["tube-wand", (by) => ({ crankMm: 20 * by })],
      ["tube-loop", (by) => ({ efficiency: by / 10 })],
    );
    const by = fc.double({ min: 1, max: 9, noNaN: true });
    fc.assert(
      fc.property(usual, steps, by, by, (shade, [kind, change], a, b) => {
        const pull = (at: number) =>
          planned(tubeInput(withDrive(usualResolved(shade), change(at), kind), kind)).values.pullN;
        expect(pull(Math.max(a, b))).toBeLessThanOrEqual(pull(Math.min(a, b)) + 1e-9);
      }),
    );
  });

  test("the weight of the lowered shade is the same in torque and course", () => {
    fc.assert(
      fc.property(anyJob, fc.constantFrom(...KINDS), (job, kind) => {
        for (const resolved of resolvedShadesOf(job)) {
          const { values: lift } = planned(tubeInput(resolved, kind));
          const [lowered] = lift.course.heights;
          expectNear(lift.heldLoweredN, lowered?.heldN ?? Number.NaN, 1e-9 * lift.heldLoweredN + 1e-12);
          expectNear(
            lift.torqueLoweredNm,
            lowered?.torqueNm ?? Number.NaN,
            1e-9 * lift.torqueLoweredNm + 1e-12,
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  test("a spring's band is half of what the weight on the cords changes by, on the lowered spool", () => {
    const { values: lift } = planned(tubeInput(resolvedWith({ shade: { mount: "to-size" } }), "spring"));
    if (lift.kind !== "spring") throw new Error("invalid lift");
    const changeN = (lift.torqueRaisedNm - lift.torqueLoweredNm) / (lift.woundLoweredMm / 1000);
    expectNear(lift.bandN, changeN / 2, 1e-9);
    expectNear(lift.pullN, changeN, 1e-9);
  });
});

describe("what the hand works", () => {
  const high = (kind: TubeKind, sillAboveFloorMm: number | undefined, lift = {}) =>
    tubeInput(
      resolvedWith({
        opening: {
          widthsMm: [900],
          heightsMm: [1500],
          ...(sillAboveFloorMm === undefined ? {} : { sillAboveFloorMm }),
        },
        shade: { mount: "inside", making: { lift } },
      }),
      kind,
    );

  test.each(["tube-loop", "tube-wand"] as const)(
    "%s: half the shade, or down to 1.6 m above the floor (the higher of the two published heights)",
    (kind) => {
      const drop = (input: TubeInput) => {
        const { values: lift } = planned(input);
        return lift.kind === "tube-loop"
          ? [lift.loopDropMm, lift.loopEndAboveFloorMm]
          : lift.kind === "tube-wand"
            ? [lift.wandMm, lift.wandEndAboveFloorMm]
            : [];
      };
      const [unknownMm, nothing] = drop(high(kind, undefined));
      expect(nothing).toBeUndefined();
      const half = high(kind, undefined).size.finishedLengthMm / 2;
      expectNear(unknownMm ?? 0, half, 1e-9);
      const [clearMm, endMm] = drop(high(kind, 500));
      expectNear(endMm ?? 0, 1600, 1e-9);
      expect(clearMm ?? 0).toBeLessThan(half);
      expectNear(drop(high(kind, 2000))[0] ?? 0, half, 1e-9);
    },
  );

  test("a loop all round: twice the drop and round two wheels of 36 mm, drawn by hand", () => {
    const { values: lift } = planned(high("tube-loop", undefined, { loopDropMm: 700 }));
    if (lift.kind !== "tube-loop") throw new Error("invalid lift");
    // Two strands of 700 − 18 mm between the axes and half a turn of 36 mm at either end.
    expectNear(lift.loopPerimeterMm, 2 * (700 - 18) + Math.PI * 36, 1e-9);
  });

  test.each([
    ["spring", "lift.spring-unproven", "unproven"],
    ["tube-loop", "lift.loop-tensioner", "note"],
    ["motor", "lift.motor-power", "note"],
  ] as const)("%s never goes without its caution", (kind, id, severity) => {
    const { findings } = planned(high(kind, 900));
    expect(findings.find((finding) => finding.id === id)).toMatchObject({ severity });
  });

  test("a motor on the mains, or on nobody knows what, is a licensed electrician's", () => {
    for (const power of ["mains", undefined] as const) {
      const resolved = withDrive(resolvedWith({}), { power }, "motor");
      const finding = planned(tubeInput(resolved, "motor")).findings.find(
        ({ id }) => id === "lift.motor-power",
      );
      expect(finding?.text).toMatch(/licensed electrician/);
      expect(finding?.severity).toBe("unproven");
    }
  });

  test("nothing is said of the time where the motor's speed is not known; 28 turns a minute else", () => {
    const silent = planned(
      tubeInput(withDrive(resolvedWith({}), { turnsPerMin: undefined }, "motor"), "motor"),
    ).values;
    expect(silent).not.toHaveProperty("raiseSeconds");
    const { values: lift } = planned(
      tubeInput(withDrive(resolvedWith({}), { turnsPerMin: 28 }, "motor"), "motor"),
    );
    if (lift.kind !== "motor") throw new Error("invalid lift");
    expectNear(lift.raiseSeconds ?? 0, (lift.turns / 28) * 60, 1e-9);
    expect(lift.pullN).toBe(0);
  });

  test("the loop is too long for its height, out of reach, or neither", () => {
    expect(ids(high("tube-loop", 900, { loopDropMm: 2400 }))).toContain("rig.loop-on-floor");
    expect(ids(high("tube-loop", 900, { loopDropMm: 300 }))).toContain("rig.loop-out-of-reach");
    for (const id of ids(high("tube-loop", 900))) expect(id).not.toMatch(/^rig\.loop/);
  });
});

describe("cords at the back", () => {
  const rear = (rearCords: (typeof REAR_GUIDES)[number]) =>
    planned(
      tubeInput(
        resolvedWith({
          opening: { widthsMm: [inches(36)], heightsMm: [inches(60)] },
          shade: { mount: "to-size", making: { fold: { headrailMm: inches(3) }, lift: { rearCords } } },
        }),
        "spring",
      ),
    );

  test("open rings ask for nothing", () => {
    const { values: lift, findings } = rear("open");
    expect(lift).not.toHaveProperty("wovenSleeves");
    expect(findings.map(({ id }) => id)).not.toContain("lift.sleeve-friction");
  });

  test("rings grip a sleeve from the bottom ring to the board, and never the bare cord (X1: 56.2 in less the board)", () => {
    const { values: lift, findings } = rear("ring-locked");
    // 60 − 3.8 in, less 3/4 in of board, and an inch turned in at either end, raised to an eighth.
    expectNear(lift.wovenSleeves?.cutMm ?? 0, inches(57.5), 1e-6);
    expect(lift.wovenSleeves?.totalMm).toBe(5 * (lift.wovenSleeves?.cutMm ?? 0));
    const finding = findings.find(({ id }) => id === "rig.gripped-sleeve");
    expect(finding?.text).toMatch(/Do not fix the bare cord itself at every ring/);
    // The cloth above the top ring of X1 is 10.6 in: all that would ever fold.
    expect(finding?.text.replaceAll("\u00a0", " ")).toContain("10 5⁄8 in");
  });

  test.each(["ring-locked", "enclosed"] as const)("%s: what the sleeves rub is not proven", (rearCords) => {
    const found = rear(rearCords).findings.filter(({ id }) => id === "lift.sleeve-friction");
    expect(found).toMatchObject([{ severity: "unproven" }]);
  });
});

test("X1 with a loop: five spools above five columns, cords of 56.2 in, three turns and 6 in of knots", () => {
  const resolved = resolvedWith({
    opening: { widthsMm: [inches(36)], heightsMm: [inches(60)] },
    shade: {
      mount: "to-size",
      making: { fold: { headrailMm: inches(3) }, lift: { knotsMm: inches(6) } },
    },
  });
  const { values: lift } = planned(tubeInput(resolved, "tube-loop", PLAIN_MASS));
  expect(lift.spools.map(({ xMm }) => Math.round(xMm / inches(1)))).toEqual([2, 10, 18, 26, 34]);
  for (const cord of lift.cords) expectNear(cord.lengthMm, inches(56.2 + 6) + 3 * Math.PI * 21.4, 1e-6);
});
