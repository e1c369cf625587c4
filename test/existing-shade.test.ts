import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawSheet } from "../src/drawing/index.ts";
import {
  EXISTING_TASKS,
  type Existing,
  type Job,
  jobSchema,
  LIFT_KINDS,
  type LiftKind,
  type Making,
  STYLES,
} from "../src/job/index.ts";
import { type Plan, plan, planCutting, proveRemedies, type ShadePlan } from "../src/plan/index.ts";
import { CUT_LIST, MARKING_LIST, wholeList } from "../src/tables/index.ts";
import { GRAVITY } from "../src/units/index.ts";
import { anyJob } from "./arbitrary-job.ts";
import { jobWith } from "./job-with.ts";
import { expectNear } from "./near.ts";
import { workroomJob } from "./workroom-job.ts";

type Hung = Partial<Existing> & Pick<Existing, "rowsFromHemMm" | "columnsFromLeftMm">;

/** The same job, where this shade of each window hangs already. */
function hanging(job: Job, of: (window: string) => Existing | undefined): Job {
  return jobSchema.parse({
    ...job,
    rooms: job.rooms.map((room) => ({
      ...room,
      windows: room.windows.map((window) => {
        const existing = of(window.id);
        return existing === undefined ? window : { ...window, shade: { ...window.shade, existing } };
      }),
    })),
  });
}

/** Measured just as it was planned, and to be strung anew. */
function asPlanned({ shades }: Plan): (window: string) => Existing | undefined {
  return (window) => {
    const shade = shades.find(({ shadeId }) => shadeId === window);
    return shade && restrung(shade);
  };
}

function restrung({ grid, lift }: ShadePlan): Existing {
  return {
    tasks: ["restring"],
    strung: lift.kind,
    rowsFromHemMm: grid.rows.map(({ fromHemMm }) => fromHemMm),
    columnsFromLeftMm: grid.columns.map(({ xMm }) => xMm),
  };
}

function one(job: Job): ShadePlan {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
}

interface Asked {
  existing: Hung;
  lift?: NonNullable<Making["lift"]>;
  making?: Making;
  widthMm?: number;
  heightMm?: number;
}

/** A flat shade of 900 by 1500 that hangs, worked with a cord lock unless said otherwise. */
function hungJob({ existing, lift, making, widthMm = 900, heightMm = 1500 }: Asked): Job {
  return jobWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [heightMm], sillAboveFloorMm: 900 },
      shade: {
        mount: "to-size",
        making: { ...making, lift: { kind: "cord-lock", ...lift } },
        existing: { tasks: ["restring"], ...existing },
      },
    },
    { units: { system: "metric", ruler: "1 mm" } },
  );
}

const UNEVEN = {
  rowsFromHemMm: [120, 330, 560, 770, 1010, 1230],
  columnsFromLeftMm: [60, 330, 840],
};

function expectSameCords(before: ShadePlan, after: ShadePlan, what: string): void {
  const lengths = ({ lift }: ShadePlan) => lift.cords.map(({ lengthMm }) => lengthMm);
  expect(lengths(after).length, what).toBe(lengths(before).length);
  lengths(before).forEach((mm, i) => {
    expectNear(lengths(after)[i] ?? Number.NaN, mm, 1e-6 * Math.max(1, mm), `${what}: cord ${i + 1}`);
  });
  expect(after.lift.cords.map(({ cutMm }) => cutMm)).toEqual(before.lift.cords.map(({ cutMm }) => cutMm));
}

describe("a shade restrung that measures just what was planned", () => {
  test("has the cords of that plan: every style with every lift, at drawn sizes", () => {
    for (const style of STYLES)
      for (const kind of LIFT_KINDS)
        fc.assert(
          fc.property(
            fc.integer({ min: 500, max: 2000 }),
            fc.integer({ min: 800, max: 2200 }),
            fc.constantFrom("left" as const, "right" as const),
            (widthMm, heightMm, controlSide) => {
              const job = jobWith({
                opening: { widthsMm: [widthMm], heightsMm: [heightMm], sillAboveFloorMm: 700 },
                shade: { style, mount: "outside", making: { lift: { kind, controlSide } } },
              });
              const before = plan(job);
              const after = plan(hanging(job, asPlanned(before)));
              const [was, is] = [before.shades[0], after.shades[0]];
              if (was === undefined || is === undefined) throw new Error("invalid test job: no shade");
              expectSameCords(was, is, `${style}, ${kind}`);
              expectNear(is.lift.pullN, was.lift.pullN, 1e-6 * Math.max(1, was.lift.pullN));
              expectNear(is.grid.travelMm, was.grid.travelMm, 1e-6);
              expectNear(is.grid.raisedHeightMm, was.grid.raisedHeightMm, 1e-6);
              expect(is.safety.counts).toEqual(was.safety.counts);
            },
          ),
          { numRuns: 2 },
        );
  });

  test.each([
    ["jobs as a workroom has them", workroomJob, 20],
    ["any job", anyJob, 20],
  ] as const)("%s", (_, jobs, numRuns) => {
    fc.assert(
      fc.property(jobs, (drawn: Job) => {
        // A room in line is laid by its windows together: one that hangs already takes no part in it.
        const job = { ...drawn, rooms: drawn.rooms.map(({ inLine: _line, ...room }) => room) };
        const before = plan(job);
        const after = plan(hanging(job, asPlanned(before)));
        before.shades.forEach((was, i) => {
          const is = after.shades[i];
          const { grid, size } = was;
          const laid = grid.rows.every(
            ({ fromHemMm }, r) =>
              fromHemMm < size.finishedLengthMm && fromHemMm - (grid.rows[r - 1]?.fromHemMm ?? -10) > 5.1,
          );
          const apart = grid.columns.every(
            ({ xMm }, c) =>
              xMm >= 0 && xMm <= size.finishedWidthMm && xMm - (grid.columns[c - 1]?.xMm ?? -10) > 5.1,
          );
          if (is === undefined || !laid || !apart) return;
          // Who chose no lift keeps the one that hangs; what was proposed with it for the back is not asked again.
          expectSameCords(was, is, was.style);
        });
      }),
      { numRuns },
    );
  });
});

describe("measured as it is", () => {
  test("uneven rows and columns: cord lengths by hand", () => {
    const { lift, grid } = one(
      hungJob({
        existing: UNEVEN,
        lift: { seat: "between", seatMm: 780, tailMm: 700, knotsMm: 150 },
      }),
    );
    expect(grid.rows.map(({ fromHemMm }) => fromHemMm)).toEqual(UNEVEN.rowsFromHemMm);
    expect(grid.columns.map(({ xMm }) => xMm)).toEqual(UNEVEN.columnsFromLeftMm);
    if (lift.kind !== "cord-lock") throw new Error("invalid test: no lock");
    // Plane geometry: up from the bottom row, 120 above the hem, and along the board to the lock.
    const byHand = [60, 330, 840].map((x) => 1500 - 120 + Math.abs(lift.seat.xMm - x) + 700 + 150);
    lift.cords.forEach((cord, i) => {
      expectNear(cord.lengthMm, byHand[i] ?? Number.NaN, 1e-6);
    });
    // Raised, the top row, 270 below the top, rises to the headrail allowance; all rows below come after it.
    expectNear(grid.travelMm, 1500 - 120 - grid.headrailMm, 1e-9);
    expectNear(grid.raisedHeightMm, grid.headrailMm + 120, 1e-9);
    expect(grid.spacingsMm).toEqual([210, 230, 210, 240, 220]);
  });

  test("the loads of uneven columns: half bays of limp cloth, and a continuous beam on three columns", () => {
    const { lift, findings } = one(hungJob({ existing: { ...UNEVEN, massKg: 1.2 } }));
    const sum = lift.cords.reduce((total, { loadN }) => total + loadN, 0);
    expect(sum).toBeGreaterThanOrEqual(lift.heldN - 1e-9);
    // Limp: the middle column carries from half way to the first to half way to the last: (840 − 60)/2 of 900.
    const middle = (lift.heldN * (840 - 60)) / 2 / 900;
    expect(lift.cords[1]?.loadN ?? 0).toBeGreaterThanOrEqual(middle - 1e-9);
    expect(findings.map(({ id }) => id)).toContain("existing.uneven-columns");
  });

  test("weighed, it hangs on its cords by what it weighs", () => {
    const taken = one(hungJob({ existing: UNEVEN }));
    const weighed = one(hungJob({ existing: { ...UNEVEN, massKg: 2 * taken.mass.totalKg } }));
    expectNear(weighed.mass.totalKg, 2 * taken.mass.totalKg, 1e-12);
    expectNear(weighed.lift.heldN, 2 * taken.lift.heldN, 1e-9);
    expect(weighed.lift.heldN).toBeLessThanOrEqual(weighed.mass.totalKg * GRAVITY);
  });

  test("measures in any order, one twice, one beyond the shade", () => {
    const shade = one(
      hungJob({ existing: { rowsFromHemMm: [700, 300, 300, 1600], columnsFromLeftMm: [850, 50, 450] } }),
    );
    expect(shade.grid.rows.map(({ fromHemMm }) => fromHemMm)).toEqual([300, 700]);
    expect(shade.grid.columns.map(({ xMm }) => xMm)).toEqual([50, 450, 850]);
    expect(shade.findings.find(({ id }) => id === "existing.outside")?.severity).toBe("stop");
  });
});

/** Plane geometry by hand: a row runs straight from its height at the left edge to that at the right. */
describe("rows that slant, and a hem that slopes", () => {
  const columnsFromLeftMm = [50, 450, 850];
  const rises = ({ lift }: ShadePlan) =>
    [...lift.cords].sort((a, b) => a.number - b.number).map(({ riseMm }) => riseMm);
  const expectRises = (shade: ShadePlan, wanted: readonly number[]) => {
    wanted.forEach((mm, i) => {
      expectNear(rises(shade)[i] ?? Number.NaN, mm, 1e-6);
    });
  };
  const PARALLEL = { rowsFromHemMm: [100, 300, 500], rowsFromHemRightMm: [190, 390, 590] };

  test.each(LIFT_KINDS)("every cord is as long as its own column asks: %s", (kind) => {
    // 100 mm at the left edge, 190 mm at the right of 900 mm: a tenth of what lies across.
    const shade = one(
      hungJob({ existing: { ...PARALLEL, columnsFromLeftMm, strung: kind }, lift: { kind } }),
    );
    expectRises(shade, [1500 - 105, 1500 - 145, 1500 - 185]);
    expectNear(shade.grid.travelMm, 1500 - 190 - shade.grid.headrailMm, 1e-6);
    expect(shade.findings.find(({ id }) => id === "existing.rows-on-slope")?.severity).toBe("note");
    expect(shade.findings.map(({ id }) => id)).not.toContain("existing.slanting-rows");
  });

  test("as high at one edge as at the other they are those of a level shade", () => {
    const level = hungJob({ existing: { rowsFromHemMm: [100, 300], columnsFromLeftMm } });
    const both = hungJob({
      existing: {
        rowsFromHemMm: [100, 300],
        rowsFromHemRightMm: [100, 300],
        hemFallMm: 0,
        columnsFromLeftMm,
      },
    });
    expect(one(both).grid).toEqual(one(level).grid);
  });

  test("over a hem that slopes, under a head that does: from the hem right below to the head right above", () => {
    const existing: Hung = {
      rowsFromHemMm: [100, 300],
      columnsFromLeftMm,
      hemFallMm: 90,
      hemLow: "right",
    };
    // The length is measured to the low end: the hem lies at 1410 mm on the left and at 1500 mm on the right.
    expectRises(one(hungJob({ existing })), [1410 + 5 - 100, 1410 + 45 - 100, 1410 + 85 - 100]);
    const sloping = hungJob({ existing });
    for (const { windows } of sloping.rooms)
      for (const { opening } of windows) opening.head = { kind: "angled", fallMm: 180, high: "right" };
    expectRises(one(sloping), [1315 - 170, 1355 - 90, 1395 - 10]);
  });

  test("mirrored, its cords are mirrored", () => {
    const of = (
      left: readonly number[],
      right: readonly number[],
      low: "left" | "right",
      side: "left" | "right",
    ) =>
      one(
        hungJob({
          existing: {
            rowsFromHemMm: [...left],
            rowsFromHemRightMm: [...right],
            hemFallMm: 40,
            hemLow: low,
            columnsFromLeftMm,
          },
          lift: { controlSide: side },
        }),
      );
    const there = of([100, 310], [150, 350], "right", "right");
    const here = of([150, 350], [100, 310], "left", "left");
    expectRises(here, [...rises(there)].reverse());
    expectNear(here.lift.cordTotalMm, there.lift.cordTotalMm, 1e-6);
  });

  test("unlike each other they are a fault: half of the difference, over 10 mm; even rows answer it", () => {
    const of = (top: number) =>
      hungJob({
        existing: { rowsFromHemMm: [100, 300, 500], rowsFromHemRightMm: [100, 300, top], columnsFromLeftMm },
      });
    const found = (job: Job) =>
      proveRemedies(job, plan(job)).shades[0]?.findings.find(({ id }) => id === "existing.slanting-rows");
    expect(found(of(519))).toBeUndefined();
    expect(found(of(521))?.severity).toBe("fix");
    expect(found(of(521))?.remedies.map(({ label }) => label)).toEqual(["Sew the rings anew at even rows"]);
    const shade = one(
      hungJob({ existing: { ...PARALLEL, columnsFromLeftMm, tasks: ["even-rows"], hemFallMm: 30 } }),
    );
    // Between the middles of the lowest and the top row, as far above the hem at both edges.
    expect(shade.grid.rows.map(({ ends }) => [ends?.leftFromHemMm, ends?.rightFromHemMm])).toEqual([
      [145, 145],
      [345, 345],
      [545, 545],
    ]);
    expect(shade.existing?.newRows).toEqual([1, 2, 3]);
  });

  test("of which one edge is missing, or which cross, they are asked for again", () => {
    const ids = (existing: Hung) => one(hungJob({ existing })).findings.map(({ id }) => id);
    expect(ids({ rowsFromHemMm: [100, 300], rowsFromHemRightMm: [120], columnsFromLeftMm })).toContain(
      "existing.one-sided",
    );
    expect(ids({ rowsFromHemMm: [100, 300], rowsFromHemRightMm: [300, 300], columnsFromLeftMm })).toContain(
      "existing.rows-cross",
    );
  });

  test("the review counts the edge at which rows are further apart: 200 mm and no more (EN 13120, as reported)", () => {
    const of = (rightMm: number) => {
      const existing = {
        rowsFromHemMm: [100, 280, 460, 640, 820, 1000, 1180, 1360],
        rowsFromHemRightMm: [100, 280, 460, 640, 820, 1000, 1180, 1180 + rightMm],
        columnsFromLeftMm,
      };
      const shade = one({ ...hungJob({ existing }), place: "eu", purpose: "for-sale" });
      return shade.safety.results.find(({ ruleId }) => ruleId === "EU-REAR")?.outcome;
    };
    expect([of(199), of(202)]).toEqual(["not-shown-to-fail", "failed"]);
  });

  test("rings that are added lie on the line between both edges, as marked in list and drawing", () => {
    const job = hungJob({
      existing: {
        rowsFromHemMm: [100, 500],
        rowsFromHemRightMm: [190, 590],
        columnsFromLeftMm,
        tasks: ["add-rows"],
      },
      making: { fold: { largestSpacingMm: 200, headrailMm: 900 } },
    });
    const made = plan(job);
    const rings = wholeList(MARKING_LIST, made).rows.filter((row) => row[2] === "ring" && row[3] === 2);
    // Row 2 is half way: 300 mm at the left edge, 390 mm at the right.
    expect(rings.map((row) => row[6])).toEqual([305, 345, 385]);
    const [shade] = made.shades;
    if (shade === undefined) throw new Error("invalid test job: no shade");
    const crossed = drawSheet("marking", made, shade).primitives.flatMap((one) =>
      one.kind === "marker" && one.shape === "cross" ? [one.at] : [],
    );
    for (const [drawnX, y] of crossed.filter((_, i) => i < columnsFromLeftMm.length))
      expectNear(y, 1500 - (300 + (900 - drawnX) / 10), 1e-6);
    expect(shade.steps.find(({ id }) => id === "make-added-rings")?.text).toMatch(
      /at the left edge.*at the right/,
    );
  });
});

describe("what is done to it", () => {
  const fold = { largestSpacingMm: 200, headrailMm: 100 };

  test("rows added: every stretch over 200 parted, as evenly as that goes, up to the headrail allowance", () => {
    const shade = one(
      hungJob({
        existing: {
          rowsFromHemMm: [100, 600],
          columnsFromLeftMm: [50, 450, 850],
          strung: "cord-lock",
          tasks: ["add-rows"],
        },
        making: { fold },
      }),
    );
    // 100 to 600 in three of 166.7; 600 to 1400 (1500 − 100) in four of 200 or five of 160, which is nearer.
    const rows = [100, 266.667, 433.333, 600, 760, 920, 1080, 1240];
    shade.grid.rows.forEach(({ fromHemMm }, i) => {
      expectNear(fromHemMm, rows[i] ?? Number.NaN, 1e-3);
    });
    expect(shade.existing?.newRows).toEqual([2, 3, 5, 6, 7, 8]);
    expect(shade.existing?.takes).toMatchObject({ rings: 18, cords: false, lock: false });
    expect(wholeList(MARKING_LIST, plan(hungJob({ existing: UNEVEN }))).rows).toEqual([]);
  });

  test("rows made even: the lowest and the top row stay, rings of the moved ones are sewn anew", () => {
    const shade = one(
      hungJob({
        existing: {
          rowsFromHemMm: [100, 250, 520, 700],
          columnsFromLeftMm: [50, 850],
          tasks: ["even-rows"],
        },
      }),
    );
    expect(shade.grid.rows.map(({ fromHemMm }) => fromHemMm)).toEqual([100, 300, 500, 700]);
    expect(shade.existing?.newRows).toEqual([2, 3]);
    expect(shade.existing?.takes.rings).toBe(4);
  });

  test("a column added in a wide bay: rings on every row, an eye, and all cords new; by hand 50, 450, 650, 850", () => {
    const asked = (tasks: Existing["tasks"]) =>
      hungJob({
        existing: {
          rowsFromHemMm: [150, 350, 550],
          columnsFromLeftMm: [50, 450, 650, 850],
          tasks,
          strung: "cleat",
        },
        lift: { kind: "cleat" },
      });
    const before = one(asked(["restring"]));
    expect(before.existing?.newColumns).toEqual([]);
    const shade = one(asked(["add-columns"]));
    // The bay of 400 beside bays of 200 is parted in two.
    expect(shade.grid.columns.map(({ xMm }) => xMm)).toEqual([50, 250, 450, 650, 850]);
    expect(shade.existing?.newColumns).toEqual([2]);
    expect(shade.existing?.takes).toMatchObject({ rings: 3, eyes: 1, cords: true, lock: false });
    expect(shade.lift.cords).toHaveLength(5);
    expect(shade.steps.find(({ id }) => id === "measure-hung")?.text).toContain("4 columns");
    const [step] = shade.steps.filter(({ id }) => id === "make-added-rings");
    expect(step?.text.replaceAll(" ", " ")).toMatch(/column 2 at 250 mm.*there on every row/);
    const eyes = shade.steps.find(({ id }) => id === "board-eyes");
    expect(eyes?.title).toBe("Screw in 1 eye");
    expect(shade.cost.shopping.find(({ id }) => id.startsWith("eye-"))?.quantity).toBe(1);
    const rings = wholeList(MARKING_LIST, plan(asked(["add-columns"]))).rows.filter(
      (row) => row[2] === "ring",
    );
    expect(rings.map((row) => [row[3], row[4]])).toEqual([
      [1, 2],
      [2, 2],
      [3, 2],
    ]);
  });

  test("an uneven bay offers the column that sets it right", () => {
    const job = hungJob({
      existing: { rowsFromHemMm: [150, 350], columnsFromLeftMm: [50, 450, 650, 850], tasks: ["restring"] },
    });
    const finding = proveRemedies(job, plan(job)).shades[0]?.findings.find(
      ({ id }) => id === "existing.uneven-columns",
    );
    expect(finding?.remedies.map(({ label }) => label)).toContain("Add a column of rings there");
  });

  test("sleeves that are there stay: none is made, and the review counts them", () => {
    const hung = (rearCords?: "enclosed") =>
      one(
        hungJob({
          existing: { ...UNEVEN, tasks: ["add-rows"], ...(rearCords === undefined ? {} : { rearCords }) },
        }),
      );
    expect(hung().lift.rearCords).toBe("open");
    const kept = hung("enclosed");
    expect(kept.lift.rearCords).toBe("enclosed");
    expect(kept.existing?.takes.sleeves).toBe(false);
    expect(kept.steps.map(({ id }) => id)).not.toContain("make-sleeves");
  });

  test("a cleat that stays is tried, not bought or screwed on", () => {
    const shade = one(
      hungJob({ existing: { ...UNEVEN, strung: "cleat", tasks: ["fit-lock"] }, lift: { kind: "cord-lock" } }),
    );
    expect(shade.existing?.takes.cleat).toBe(false);
    const step = shade.steps.find(({ id }) => id === "hang-cleat");
    expect(step?.title).toBe("Try its cleat");
    expect(step?.text).not.toContain("Screw the cleat");
  });

  const bought = (shade: ShadePlan) => shade.cost.shopping.map(({ id }) => id).sort();
  const strungFor = (strung: LiftKind, tasks: Existing["tasks"], kind: LiftKind) =>
    hungJob({ existing: { ...UNEVEN, strung, tasks }, lift: { kind } });

  test("bought is only what it takes", () => {
    expect(bought(one(strungFor("cord-lock", ["restring"], "cord-lock")))).toEqual([
      "connector",
      "cord-cord-1-4",
    ]);
    const fitted = one(strungFor("cleat", ["fit-lock"], "cord-lock"));
    const lockId = `lock-${"lockId" in fitted.lift ? fitted.lift.lockId : ""}`;
    expect(bought(fitted)).toEqual(["connector", lockId, "lock-screws"].sort());
    const replaced = bought(one(strungFor("cord-lock", ["replace-lock", "restring"], "cord-lock")));
    expect(replaced).toEqual(["connector", "cord-cord-1-4", lockId, "lock-screws"].sort());
    const cordless = bought(one(strungFor("cleat", ["go-cordless"], "tube-wand")));
    for (const id of cordless) expect(id).toMatch(/^(?:cord-|tube|spool-|support-|drive-|lift-screws|wand-)/);
    expect(cordless.some((id) => id.startsWith("drive-"))).toBe(true);
    const cleat = bought(one(strungFor("cord-lock", ["restring"], "cleat")));
    expect(cleat).toEqual(["cleat", "connector", "cord-cord-1-4", "eye-eye-12"]);
  });

  test("no cloth of it is cut, bought or laid; the cutting plan and the lists hold only its cords", () => {
    const job = strungFor("cord-lock", ["restring"], "cord-lock");
    const made = plan(job);
    const cutting = planCutting(job, made, 5);
    expect(cutting.cloths).toEqual([]);
    expect(cutting.lengths.map(({ id }) => id)).toEqual(["cord-cord-1-4"]);
    expect(wholeList(CUT_LIST, made).rows).toEqual([]);
    expect(made.shades[0]?.workings.some(({ id }) => id.endsWith("-cut-length"))).toBe(false);
  });

  test("its steps are those of the work, in the order of the work", () => {
    const steps = (job: Job) => one(job).steps.map(({ id }) => id);
    const restring = steps(strungFor("cord-lock", ["restring"], "cord-lock"));
    expect(restring.slice(0, 2)).toEqual(["measure-hung", "measure-take-down"]);
    expect(restring).toEqual(
      expect.arrayContaining(["string-cut", "string-tie", "string-thread", "hang-again"]),
    );
    expect(restring).not.toContain("board-lock");
    expect(restring.some((id) => /^(?:cut|make|train)-/.test(id))).toBe(false);
    const fitted = steps(strungFor("cleat", ["fit-lock"], "cord-lock"));
    expect(fitted).toEqual(
      expect.arrayContaining(["board-lock", "string-keep", "string-thread", "hang-try"]),
    );
    expect(fitted).not.toContain("string-cut");
    const cordless = steps(strungFor("cord-lock", ["go-cordless"], "spring"));
    expect(cordless).toEqual(expect.arrayContaining(["board-remove-old", "board-tube", "string-cut"]));
    const added = steps(
      hungJob({ existing: { rowsFromHemMm: [150, 900], columnsFromLeftMm: [50, 850], tasks: ["add-rows"] } }),
    );
    expect(added).toEqual(expect.arrayContaining(["make-added-rings", "string-pass-rings", "train-tie"]));
    expect(new Set(added).size).toBe(added.length);
  });

  test("a lift that nobody chose is the one that hangs, but for what is to be done", () => {
    const kindOf = (strung: LiftKind, tasks: Existing["tasks"]) =>
      plan(
        jobSchema.parse({
          format: "shadewright-job",
          version: 1,
          id: "j",
          name: "J",
          place: "us",
          purpose: "own-home",
          rooms: [
            {
              id: "r",
              name: "R",
              windows: [
                {
                  id: "w",
                  name: "W",
                  opening: { widthsMm: [900], heightsMm: [1500] },
                  shade: { mount: "to-size", existing: { ...UNEVEN, strung, tasks } },
                },
              ],
            },
          ],
        }),
      ).shades[0]?.lift;
    expect(kindOf("cleat", ["restring"])?.kind).toBe("cleat");
    expect(kindOf("tube-loop", ["restring"])?.kind).toBe("tube-loop");
    expect(kindOf("cleat", ["fit-lock"])?.kind).toBe("cord-lock");
    expect(kindOf("cleat", ["go-cordless"])?.cordsAtFront).toBe(false);
    expect(kindOf("cleat", ["make-safer"])?.cordsAtFront).toBe(false);
  });
});

describe("what speaks against it", () => {
  const ids = (job: Job) => one(job).findings.map(({ id }) => id);

  test("each with its limit, below and above", () => {
    const columnsFromLeftMm = [50, 450, 850];
    const rows = (...rowsFromHemMm: number[]) =>
      ids(hungJob({ existing: { rowsFromHemMm, columnsFromLeftMm }, making: { fold: { headrailMm: 100 } } }));
    // A fold hangs by half of its spacing: 200 and 221 differ by 10.5, 200 and 219 by 9.5; a step each time is graded.
    expect(rows(100, 300, 521, 721)).toContain("existing.uneven-rows");
    expect(rows(100, 300, 519, 719)).not.toContain("existing.uneven-rows");
    expect(rows(100, 340, 550, 730, 880)).not.toContain("existing.uneven-rows");
    expect(rows(100, 310, 520, 730, 940, 1150)).toContain("existing.rows-wide");
    expect(rows(100, 300, 500, 700, 900, 1100, 1300)).not.toContain("existing.rows-wide");
    const age = (cordYears: number | undefined, tasks: Existing["tasks"]) =>
      ids(
        hungJob({
          existing: { ...UNEVEN, strung: "cleat", tasks, ...(cordYears === undefined ? {} : { cordYears }) },
        }),
      );
    expect(age(6, ["fit-lock"])).toContain("existing.cord-old");
    expect(age(5, ["fit-lock"])).not.toContain("existing.cord-old");
    expect(age(undefined, ["fit-lock"])).toContain("existing.cord-age");
    expect(age(6, ["fit-lock", "restring"])).not.toContain("existing.cord-old");
    expect(ids(hungJob({ existing: UNEVEN }))).toContain("existing.rings-untried");
    expect(ids(hungJob({ existing: { ...UNEVEN, ringsTried: true } }))).not.toContain(
      "existing.rings-untried",
    );
  });

  test("the figure of each finding is there, and what the rings are tried at is a child’s pull or a tug", () => {
    const shade = one(hungJob({ existing: { ...UNEVEN, strung: "cleat", tasks: ["fit-lock"], massKg: 30 } }));
    const known = new Map(shade.workings.map(({ id, value }) => [id, value]));
    for (const { id, figures = [] } of shade.findings.filter(({ id }) => id.startsWith("existing.")))
      for (const figure of figures) expect(known.has(figure), `${id}: ${figure}`).toBe(true);
    const heaviest = Math.max(...shade.lift.cords.map(({ loadN }) => loadN));
    expectNear(known.get("existing.ring-test") ?? Number.NaN, Math.max(35, 3 * heaviest), 1e-9);
  });

  test("what is offered cures it, planned anew", () => {
    const job = hungJob({
      existing: {
        rowsFromHemMm: [100, 300, 700, 900],
        columnsFromLeftMm: [50, 450, 850],
        strung: "cleat",
        tasks: ["go-cordless"],
      },
      lift: { kind: "cleat" },
    });
    const before = plan(job);
    const found = before.shades[0]?.findings ?? [];
    const remediesOf = (id: string) => found.find((finding) => finding.id === id)?.remedies ?? [];
    expect(remediesOf("existing.uneven-rows")).toHaveLength(1);
    expect(remediesOf("existing.rows-wide")).toHaveLength(1);
    expect(remediesOf("existing.still-corded").length).toBeGreaterThan(0);
    const proven = proveRemedies(job, before);
    const kept = proven.shades[0]?.findings.find(({ id }) => id === "existing.uneven-rows");
    expect(kept?.remedies).toHaveLength(1);
  });
});

/** Where a plan holds a number that is none. */
function notFinite(value: unknown, at = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [at];
  if (typeof value === "string") return /\b(?:NaN|Infinity)\b/.test(value) ? [at] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => notFinite(one, `${at}/${key}`));
}

test("any shade, however it was measured, is planned, drawn and listed without a number that is none", () => {
  const measures = (max: number) =>
    fc.array(fc.double({ min: 0, max, noNaN: true }), { minLength: 2, maxLength: 12 });
  fc.assert(
    fc.property(
      anyJob,
      fc.record({
        tasks: fc.subarray([...EXISTING_TASKS], { minLength: 1 }),
        strung: fc.constantFrom(...LIFT_KINDS),
        rowsFromHemMm: measures(3000),
        columnsFromLeftMm: measures(2500),
        rowsFromHemRightMm: fc.option(measures(3000), { nil: undefined }),
        hemFallMm: fc.option(fc.double({ min: 0, max: 2000, noNaN: true }), { nil: undefined }),
        hemLow: fc.constantFrom("left", "right", undefined),
        massKg: fc.option(fc.double({ min: 0.01, max: 200, noNaN: true }), { nil: undefined }),
        cordYears: fc.option(fc.double({ min: 0, max: 100, noNaN: true }), { nil: undefined }),
      }),
      (job, existing) => {
        const made = plan(hanging(job, () => existing as Existing));
        for (const shade of made.shades) {
          expect(notFinite(shade)).toEqual([]);
          const sum = shade.form.stretches.reduce((total, { cordMm }) => total + cordMm, 0);
          expectNear(sum, shade.size.finishedLengthMm, 1e-6 * shade.size.finishedLengthMm);
          for (const kind of ["front", "back", "side", "board", "lock"] as const)
            for (const raise of [0, 0.6, 1]) drawSheet(kind, made, shade, { raise });
        }
      },
    ),
    { numRuns: 25 },
  );
});

describe("parts of a lift that is put on a shade that hangs", () => {
  // Of a new shade’s hardware these are there: what holds the board, and what stiffens the hem.
  const THERE = /^(?:board|bar|brackets|screws|staples|hook|rail-)/;
  test.each(LIFT_KINDS)("are all bought, as for a new one: %s", (kind) => {
    const lift = {
      kind,
      rearCords: "ring-locked" as const,
      rearRelease: "breakaway" as const,
      loopJoint: "breakaway" as const,
    };
    const hung = one(
      hungJob({
        existing: {
          ...UNEVEN,
          tasks: ["restring", "make-safer", "add-rows"],
          strung: kind === "cleat" || kind === "cord-lock" ? "spring" : "cleat",
        },
        lift,
      }),
    );
    const job = hungJob({ existing: UNEVEN, lift });
    for (const { windows } of job.rooms) for (const { shade } of windows) delete shade?.existing;
    const partsOf = ({ cost }: ShadePlan) =>
      cost.shopping
        .filter(({ group, id }) => group === "hardware" && !THERE.test(id))
        .map(({ id }) => id.replace(/-\d+$/, ""));
    expect(partsOf(one(job))).toContain("rear-release");
    expect(partsOf(hung)).toEqual(expect.arrayContaining(partsOf(one(job))));
  });
});
