import fc from "fast-check";
import { immutableJSONPatch, type JSONPatchDocument } from "immutable-json-patch";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { type Job, type JobInput, jobSchema, splitWindow } from "../job/index.ts";
import { plan, type ShadePlan } from "../plan/index.ts";
import { headYMm } from "../shade-plan/index.ts";

type Window = Partial<JobInput["rooms"][number]["windows"][number]>;
type Opening = Partial<NonNullable<Window["opening"]>>;

const job = (opening: Opening, shade: NonNullable<Window["shade"]> = { mount: "outside" }): Job =>
  jobWith(
    { opening: { widthsMm: [900], heightsMm: [1500], ...opening }, shade },
    { units: { system: "metric", ruler: "1 mm" } },
  );
const shadeOf = (one: Job): ShadePlan => {
  const [shade] = plan(one).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
};

describe("corners", () => {
  test("by hand: a square corner shared by two shades, board 38 mm and folds 50", () => {
    // Each keeps d / tan 45° = 88.1 mm and half of the gap of 12.7 mm from the corner; 120 mm of wall lie before it.
    const beside = { angleDeg: 90, wallMm: 120 };
    const { size } = shadeOf(job({ right: beside }));
    expectNear(size.finishedWidthMm, Math.floor(900 + 50.8 + (120 - 6.35 - 88.1)), 1e-9);
    expectNear(size.openingLeftMm ?? Number.NaN, 50.8, 1e-9);
  });

  test("by hand: a bay of 135°, where only tan 67.5° of it counts", () => {
    const { size } = shadeOf(job({ left: { angleDeg: 135, wallMm: 60 } }));
    const reach = 60 - 6.35 - 88.1 / Math.tan((67.5 * Math.PI) / 180);
    expectNear(size.finishedWidthMm, Math.floor(900 + 50.8 + reach), 1e-9);
    expectNear(size.openingLeftMm ?? Number.NaN, reach, 1e-9);
  });

  test("two shades of one corner never meet, whatever the angle", () => {
    const angle = fc.double({ min: 60, max: 180, noNaN: true });
    const wall = fc.double({ min: 0, max: 400, noNaN: true });
    fc.assert(
      fc.property(angle, wall, wall, (angleDeg, a, b) => {
        const ends = [a, b].map((wallMm) => {
          const { size } = shadeOf(job({ right: { angleDeg, wallMm } }));
          // From the corner back along its own wall to the end of the shade.
          return wallMm - (size.finishedWidthMm - 900 - (size.openingLeftMm ?? 50.8));
        });
        // The outermost corner of board and folds, seen from above, on its own side of the halving line.
        for (const along of ends) {
          const half = (angleDeg * Math.PI) / 360;
          const across = along * Math.sin(half) - 88.1 * Math.cos(half);
          expect(across).toBeGreaterThanOrEqual(-1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("a neighbour far away changes nothing", () => {
    expect(shadeOf(job({ left: { angleDeg: 90, wallMm: 2000 } })).size).toEqual(shadeOf(job({})).size);
  });
});

describe("heads that are not level", () => {
  test("an arc: its crown at the top line, its ends at the fall, every point on one circle", () => {
    // Sagitta of a chord: R = (w²/4 + f²) / 2f, any handbook of geometry.
    const size = { finishedWidthMm: 1000, head: { kind: "arched", fallMm: 250, high: "left" } } as const;
    expect(headYMm(size, 500)).toBe(0);
    expectNear(headYMm(size, 0), 250, 1e-9);
    const radius = (1000 ** 2 / 4 + 250 ** 2) / 500;
    for (const x of [10, 200, 480, 900])
      expectNear(Math.hypot(x - 500, headYMm(size, x) - radius), radius, 1e-9);
  });

  test("the shade stays below the low end, and its cords are shorter there", () => {
    const { grid, lift } = shadeOf(
      job(
        { head: { kind: "angled", fallMm: 300, high: "left" } },
        { mount: "inside", making: { lift: { kind: "cord-lock" } } },
      ),
    );
    for (const { yMm } of grid.rows) expect(yMm - grid.travelMm).toBeLessThan(1500);
    expect(grid.headrailMm).toBeGreaterThan(300);
    const [first] = lift.cords;
    const last = lift.cords.at(-1);
    const across = (last?.columnX ?? 0) - (first?.columnX ?? 0);
    const width = shadeOf(job({}, { mount: "inside" })).size.finishedWidthMm;
    expectNear((first?.riseMm ?? 0) - (last?.riseMm ?? 0), (300 * across) / width, 1e-6);
  });

  test("the board on a slope, by Pythagoras", () => {
    const { size, board } = shadeOf(job({ head: { kind: "angled", fallMm: 300 } }));
    const slope = Math.hypot(size.finishedWidthMm, 300) / size.finishedWidthMm;
    expectNear(board.cutMm, board.lengthMm * slope, 1e-9);
  });

  test.each(["hobbled", "austrian", "tailed", "relaxed"] as const)(
    "not under a %s shade, with the reason",
    (style) => {
      const found = shadeOf(job({ head: { kind: "arched", fallMm: 200 } }, { style })).findings.find(
        ({ id }) => id === "measure.head-not-for-style",
      );
      expect(found?.severity).toBe("stop");
      expect(found?.remedies).toHaveLength(1);
    },
  );
});

describe("several shades in one opening", () => {
  test("two halves and the gap between them fill it, and each is a window of its own", () => {
    const one = job({ widthsMm: [2400, 2402] }, { mount: "inside" });
    const patch = splitWindow(
      one.rooms[0]?.windows[0] ??
        (() => {
          throw new Error("invalid test job");
        })(),
      "/rooms/0/windows/0",
      2,
    );
    const split = jobSchema.parse(immutableJSONPatch(one, patch as JSONPatchDocument));
    const { shades } = plan(split);
    expect(shades.map(({ shadeId }) => shadeId)).toEqual(["window-1-1", "window-1-2"]);
    const widths = shades.reduce((sum, { size }) => sum + size.finishedWidthMm, 0);
    // Deduction of half an inch in all outside, gap of half an inch between.
    expectNear(widths, 2400 - 12.7 - 12.7, 2);
  });

  test("a window too wide for one shade offers it, and pressed it goes", () => {
    const wide = job({ widthsMm: [4200] });
    const finding = shadeOf(wide).findings.find(({ id }) => id === "measure.wide-for-one");
    const [remedy] = finding?.remedies ?? [];
    const split = jobSchema.parse(immutableJSONPatch(wide, (remedy?.patch ?? []) as JSONPatchDocument));
    expect(plan(split).shades).toHaveLength(3);
    for (const { findings } of plan(split).shades)
      expect(findings.map(({ id }) => id)).not.toContain("measure.wide-for-one");
  });
});
