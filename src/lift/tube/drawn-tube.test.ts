import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { resolvedWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plannedTube, tubeInput } from "../../../test/rig-inputs.ts";
import { saidOf } from "../../../test/said.ts";
import { workingOf } from "../../figures/index.ts";
import { CATALOGUE, type Drive } from "../../job/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import type { TubeInput } from "../lift-input.ts";
import { judgeTube } from "./judge-tube.ts";
import { planTube } from "./plan-tube.ts";
import { spoolOf } from "./spool-size.ts";
import { tubeStiffness } from "./tube-bend.ts";
import { tubeRig } from "./tube-parts.ts";
import { windCords, wrapsAbreast } from "./winding.ts";

const input = tubeInput(resolvedWith({}, { units: { system: "metric", ruler: "1 mm" } }), "tube-loop");
const { values: lift } = plannedTube(input);
const { values: tubePlan } = planTube(input);

describe("a lift that does not pass its own check", () => {
  const check = (spoilt: Partial<TubeLift>, plan = tubePlan) =>
    saidOf(judgeTube(input, { ...lift, ...spoilt } as TubeLift, plan).findings).filter(
      ({ id }) => id === "rig.check-failed",
    );

  it("must not be drilled by, and its first three faults are named", () => {
    expect(check({})).toEqual([]);
    expect(check({ cords: lift.cords.slice(1) })).toEqual([
      {
        ...{
          id: "rig.check-failed",
          stage: "rig",
          severity: "stop",
          setting: undefined,
          figures: undefined,
          remedies: [],
        },
        text: "The drawn lift does not pass its own check: not every column has one cord and one spool. Do not drill the board by it.",
      },
    ]);
    const apart = lift.cords.map((cord) => ({ ...cord, columnX: cord.columnX + 1 }));
    expect(apart.length).toBeGreaterThan(3);
    const [found] = check({ cords: apart });
    expect(found?.text.match(/does not hang under its own spool/g)).toHaveLength(3);
    expect(found?.text).toContain("; cord 2 does");
  });

  it("that reaches beyond either end of the board is found out", () => {
    const half = input.size.boardLengthMm / 2;
    const middle = input.size.finishedWidthMm / 2;
    for (const endMm of [middle - half, middle + half]) {
      const drive = { ...lift.drive, xMm: endMm };
      expect(check({ drive })[0]?.text).toContain("the drive reaches beyond the board");
    }
  });

  it("is not told of twice: where a want of room is said, that is what there is to mend", () => {
    const rig = { ...tubePlan.rig, placed: { ...tubePlan.rig.placed, faults: ["clear" as const] } };
    expect(check({ cords: lift.cords.slice(1) }, { ...tubePlan, rig })).toEqual([]);
    const drive = { ...lift.drive, forced: true };
    expect(check({ cords: lift.cords.slice(1), drive })).toEqual([]);
  });
});

it("any cord goes on a spool: stronger and stiffer ones are offered whatever a lock would take", () => {
  const strong = { id: "strong", name: "Strong", diameterMm: 4, breakingN: 1e6 };
  const weak = { ...input.shade.cord, breakingN: 1 };
  const shade = { ...input.shade, cord: weak, parts: { ...CATALOGUE, cords: [weak, strong] } };
  const judged = saidOf(
    judgeTube({ ...input, shade }, { ...lift, course: { ...lift.course, levelMm: 9 } }, tubePlan).findings,
  );
  for (const id of ["lift.cord-too-weak", "lift.stretch-out-of-level"])
    expect(judged.find((one) => one.id === id)?.remedies, id).toEqual([
      ["Use “Strong”", "lift/cord", "strong"],
    ]);
});

describe("what is drawn under the board", () => {
  /** A board of 994 mm and 50 mm deep, spools of 30 mm at 150 and 850 mm, a drive of 60 by 40 mm. */
  const { resolved, size, grid } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
  const rig = (over: Partial<Drive> = {}, side: "left" | "right" = "right", xs = [150, 850]) =>
    tubeRig({
      shade: {
        ...{ ...resolved, board: { ...resolved.board, depthMm: 50 } },
        making: { ...resolved.making, lift: { ...resolved.making.lift, controlSide: side } },
      },
      size: { ...size, finishedWidthMm: 1000, boardLengthMm: 994 },
      grid: { ...grid, columns: xs.map((xMm, i) => ({ number: i + 1, xMm })) },
      liftParts: {
        ...{ kind: "tube-loop", axisMm: 20, tube: { id: "t", name: "Tube", diameterMm: 20 } },
        spool: { lengthMm: 30, coreMm: 20, flangeMm: 36 },
        drive: { id: "d", name: "Drive", lengthMm: 60, heightMm: 40, depthMm: 40, screws: 2, ...over },
      },
    } as unknown as TubeInput);

  it("a drive against the end of the board, on the side that it is worked from", () => {
    // Board from 3 to 997 mm, 3 mm kept to its end: 36 mm in from the shade's edge.
    const right = rig({ massMaxKg: 5 });
    expect(right.drive).toMatchObject({
      ...{ id: "d", xMm: 964, zMm: 25, lengthMm: 60, heightMm: 40, depthMm: 40, place: "outside" },
      ...{ forced: false, massMaxKg: 5 },
      // Outside from 850 + 15 + 3 + 30 mm on, and in the bay 48 mm from both spools, from the left.
      feasibleMm: [
        [198, 802],
        [898, 964],
      ],
    });
    expect(rig({}, "left").drive).toMatchObject({ xMm: 36 });
    expect(rig().drive).not.toHaveProperty("massMaxKg");
    // Where the bay is too narrow it is not among the places.
    expect(rig({}, "right", [760, 850]).drive.feasibleMm).toEqual([[898, 964]]);
    expect(right.tube).toEqual({
      ...{
        id: "t",
        name: "Tube",
        diameterMm: 20,
        zMm: 25,
        axisMm: 20,
        fromMm: 120,
        toMm: 934,
        lengthMm: 814,
      },
    });
    expect(right.spools[1]).toEqual({ number: 2, xMm: 850, lengthMm: 30, coreMm: 20, flangeMm: 36 });
    // From face 934 to 126 mm are 808 mm: one between, half way.
    expect(right.supports).toEqual([
      { number: 1, xMm: 126 },
      { number: 2, xMm: 530 },
    ]);
    expect(rig({}, "left").supports.map(({ xMm }) => xMm)).toEqual([470, 874]);
  });

  it("its screws in one row up to three, in two from four on, all within its own footprint", () => {
    const screws = (count: number) =>
      rig({ screws: count }).drive.screwsMm.map(({ xMm, zMm }) => [
        Math.round(xMm - 964),
        Math.round(zMm - 25),
      ]);
    expect(screws(1)).toEqual([[0, 0]]);
    expect(screws(2)).toEqual([
      [-21, 0],
      [21, 0],
    ]);
    expect(screws(3)).toEqual([
      [-21, 0],
      [0, 0],
      [21, 0],
    ]);
    expect(screws(4)).toEqual([
      [-21, -12],
      [21, -12],
      [-21, 12],
      [21, 12],
    ]);
    expect(screws(5)).toEqual([
      [-21, -12],
      [0, -12],
      [21, -12],
      [-21, 12],
      [0, 12],
    ]);
  });
});

it("drives that were refused are told with their reasons", () => {
  const reason = "takes at most 1 kg; this shade weighs about 2 kg";
  const refused = [{ drive: { ...input.liftParts.drive, id: "weak", name: "Weak" }, reason }];
  const { parts } = planTube({ ...input, liftParts: { ...input.liftParts, refused } }).values;
  expect(parts.refusedDrives).toEqual([{ driveId: "weak", driveName: "Weak", reason }]);
  expect(
    planTube({ ...input, liftParts: { ...input.liftParts, refused: [] } }).values.parts,
  ).not.toHaveProperty("refusedDrives");
});

it("a spool is no thinner than its tube, its flanges no lower than its core, and it winds within its length", () => {
  const tube = { id: "t", name: "Tube", diameterMm: 20, spoolLengthMm: 30 };
  expect(spoolOf(tube)).toEqual({ lengthMm: 30, coreMm: 20, flangeMm: 34 });
  expect(spoolOf({ ...tube, spoolCoreMm: 26, spoolFlangeMm: 50, spoolWindMm: 24 })).toEqual({
    ...{ lengthMm: 30, coreMm: 26, flangeMm: 50, windMm: 24 },
  });
  expect(spoolOf({ ...tube, spoolCoreMm: 12, spoolFlangeMm: 15, spoolWindMm: 40 })).toEqual({
    ...{ lengthMm: 30, coreMm: 20, flangeMm: 20, windMm: 30 },
  });
});

describe("cord on its spools", () => {
  it("lies in as many wraps side by side as go between the flanges, one at least", () => {
    expect([wrapsAbreast(9, 2), wrapsAbreast(10, 2), wrapsAbreast(1, 2), wrapsAbreast(0.3, 0.1)]).toEqual([
      4, 5, 1, 3,
    ]);
  });

  it("grows with each layer: by the cord's own area, as an annulus of as much", () => {
    const wind = (windMm?: number, travelMm = 1400) => {
      const spool = { lengthMm: 30, coreMm: 20, flangeMm: 40, ...(windMm === undefined ? {} : { windMm }) };
      return windCords({
        ...{ shade: { cord: { diameterMm: 2 } }, grid: { travelMm }, liftParts: { spool } },
      } as never);
    };
    // Of so much cord the section is length × thickness: π(R² − r²)·s = l·d, from the middle of the first layer on.
    for (const [windMm, side] of [
      [undefined, 1],
      [10, 5],
    ] as const) {
      const { values, workings } = wind(windMm);
      const wrapsMm = 3 * Math.PI * 22;
      expectNear(values.wrapsMm, wrapsMm, 1e-9);
      expectNear(Math.PI * (values.loweredMm ** 2 - 11 ** 2) * side, wrapsMm * 2, 1e-6);
      expectNear(Math.PI * (values.raisedMm ** 2 - values.loweredMm ** 2) * side, 1400 * 2, 1e-6);
      expectNear(values.turns, ((values.raisedMm - values.loweredMm) * side) / 2, 1e-9);
      expect(values).toMatchObject({
        wrapsLeft: 3,
        winding: { coreRadiusMm: 10, cordDiameterMm: 2, sideBySide: side },
      });
      expect(workings.map((one) => workingOf(one).id)).toEqual([
        ...(side === 1 ? [] : ["lift.wraps-side-by-side"]),
        ...["rig.wraps-left", "lift.wound-lowered", "lift.wound-raised", "lift.turns"],
      ]);
    }
    expect(wind(10, -5).values.turns).toBe(0);
  });
});

describe("a tube of its own weight", () => {
  const tube = {
    id: "t",
    name: "Tube",
    diameterMm: 20,
    fromMm: 100,
    toMm: 1100,
    lengthMm: 1000,
    zMm: 20,
    axisMm: 20,
  };
  const part = { id: "t", name: "Tube", diameterMm: 20, wallMm: 2, spoolLengthMm: 20 };
  const stiff = (
    over: object = {},
    spools: number[] = [],
    supports = [100, 1100, 2000],
    driveMm = 100,
    loads = [30],
  ) =>
    tubeStiffness(
      { ...part, ...over },
      {
        ...{ tube, driveMm },
        spools: spools.map((xMm, i) => ({ number: i + 1, xMm, lengthMm: 20, coreMm: 20, flangeMm: 30 })),
        supports: supports.map((xMm, i) => ({ number: i + 1, xMm })),
      },
      loads,
      11,
    );
  const I = (Math.PI * (20 ** 4 - 16 ** 4)) / 64;

  // 5wL⁴/384EI and PL³/48EI, AWC Design Aid 6 (2007), figures 1 and 7; 69 GPa for aluminium.
  it("bends by 5wL⁴/384EI between two bearings, and takes aluminium where no metal is given", () => {
    const w = (500 * 9.80665) / 1e6;
    expectNear(
      stiff({ massGPerM: 500 }, [600], undefined, undefined, [0]).values?.bendMm ?? 0,
      (5 * w * 1000 ** 4) / (384 * 69_000 * I),
      1e-9,
    );
    const loaded = stiff({}, [600]);
    expectNear(loaded.values?.bendMm ?? 0, (30 * 1000 ** 3) / (48 * 69_000 * I), 1e-9);
    expect(loaded.workings.map((one) => workingOf(one).id)).toEqual(["lift.tube-bend", "lift.tube-twist"]);
    expectNear(
      stiff({ metal: "steel" }, [600]).values?.bendMm ?? 0,
      (30 * 1000 ** 3) / (48 * 200_000 * I),
      1e-9,
    );
  });

  it("is not loaded by a spool beside it, and not borne by a support beside it", () => {
    expectNear(
      stiff({}, [600, 1101], undefined, undefined, [30, 500]).values?.bendMm ?? 0,
      (30 * 1000 ** 3) / (48 * 69_000 * I),
      1e-9,
    );
    expectNear(
      stiff({}, [99, 600], undefined, undefined, [500, 30]).values?.bendMm ?? 0,
      (30 * 1000 ** 3) / (48 * 69_000 * I),
      1e-9,
    );
    // With the drive in the middle as a third bearing the far half bends alone: over a = 500 mm, loaded in its middle.
    const third = stiff({}, [350], [100, 1100], 600).values?.bendMm ?? 0;
    expect(third).toBeLessThan((30 * 500 ** 3) / (48 * 69_000 * I));
    expect(third).toBeGreaterThan(0);
  });

  it("is not judged where its wall is not known, fills it, or it has one bearing", () => {
    expect(stiff({ wallMm: undefined }, [600])).toEqual({ values: undefined, workings: [] });
    expect(stiff({ wallMm: 10 }, [600]).values).toBeUndefined();
    expect(stiff({ wallMm: 9.9 }, [600]).values).toBeDefined();
    expect(stiff({}, [600], [100], 90).values).toBeUndefined();
  });

  // M·l/(G·K), K = 2·I (Timoshenko, Strength of Materials I, ch. 10): each spool turns what lies between it and the drive.
  it("twists on each side of the drive by the spools of that side alone", () => {
    const at = (spools: number[], loads: number[]) =>
      stiff({}, spools, [100, 1100], 600, loads).values?.twistMm ?? -1;
    const unit = (11 * 11) / (26_000 * 2 * I);
    // 8 N at 300 mm, and 5 N at 500 mm to the other side: they lag by 8 · 300 and 5 · 500.
    expectNear(at([300, 1100], [8, 5]), unit * (5 * 500 - 8 * 300), 1e-12);
    // Two on one side: the nearer lags by both over its own reach, the farther by more.
    expectNear(at([800, 1000], [8, 5]), unit * (8 * 200 + 5 * 400 - (8 * 200 + 5 * 200)), 1e-12);
    expectNear(at([400, 200, 800], [8, 5, 0]), unit * (8 * 200 + 5 * 400), 1e-12);
  });
});
