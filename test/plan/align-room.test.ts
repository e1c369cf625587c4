import fc from "fast-check";
import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { describe, expect, it } from "vitest";
import { type JobInput, jobSchema } from "../../src/job/index.ts";
import { type Plan, plan, planWindow, type ShadePlan } from "../../src/plan/index.ts";
import { inches, markMm } from "../../src/units/index.ts";
import { anyJob } from "../arbitrary-job.ts";
import { anyInLine, likelyRoom, roomOf, withInLine } from "../arbitrary-room.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];

/** A shade of this length whose hem is so high above the floor. */
function hung(id: string, hemMm: number, lengthMm: number, shade: WindowInput["shade"] = {}): WindowInput {
  return {
    id,
    name: `Window ${id}`,
    opening: { widthsMm: [900], heightsMm: [lengthMm], sillAboveFloorMm: hemMm },
    shade: { mount: "to-size", ...shade },
  };
}

const headrail = (headrailMm: number) => ({ making: { fold: { headrailMm } } });

function heights({ size, grid }: ShadePlan): number[] {
  const topMm = size.topAboveFloorMm ?? Number.NaN;
  return grid.rows.map(({ yMm }) => topMm - yMm);
}

function shadeOf({ shades }: Plan, id: string): ShadePlan {
  const shade = shades.find(({ shadeId }) => shadeId === id);
  if (shade === undefined) throw new Error(`invalid test: no shade ${id}`);
  return shade;
}

const lineFindings = ({ findings }: ShadePlan | Plan) => findings.filter(({ id }) => id.startsWith("align."));

describe("a kitchen by hand", () => {
  // The sums stand in test/align/solve-line.test.ts: spacing 150 mm, least headrail 70 mm, levels 725 + whole folds.
  const windows = [
    hung("a", 650, 1450, headrail(70)),
    hung("b", 950, 1100, headrail(70)),
    hung("c", 20, 2080, headrail(70)),
  ];
  const planned = plan(roomOf(windows, { spacingMm: 150, stack: false }));
  const rowsFrom = (firstMm: number, count: number) =>
    Array.from({ length: count }, (_, i) => firstMm + 150 * i);

  it("has its rows at one height above the floor", () => {
    expect(heights(shadeOf(planned, "a"))).toEqual(rowsFrom(725, 8));
    expect(heights(shadeOf(planned, "b"))).toEqual(rowsFrom(1025, 6));
    expect(heights(shadeOf(planned, "c"))).toEqual(rowsFrom(125, 12));
  });

  it("leaves the difference to the headrail and to the hem", () => {
    expect(planned.shades.map(({ grid }) => grid.headrailMm)).toEqual([175, 125, 175]);
    expect(planned.shades.map(({ grid }) => grid.skirtMm)).toEqual([0, 0, 30]);
    expect(planned.shades.map(({ grid }) => grid.raisedHeightMm)).toEqual([250, 200, 280]);
  });

  it("says what is shared and what gave, window by window", () => {
    const line = planned.rooms[0]?.alignment;
    expect(line?.words).toBe(
      "Rows stand 150 mm apart on all windows, on 12 levels from 125 mm to 1775 mm above the floor.".replaceAll(
        / mm/g,
        "\u00a0mm",
      ),
    );
    expect(line?.windows.map(({ words }) => words.replaceAll("\u00a0", " "))).toEqual([
      "8 rows on the shared levels. It hangs 105 mm lower than its headrail needs.",
      "6 rows on the shared levels. It hangs 55 mm lower than its headrail needs.",
      "12 rows on the shared levels. It hangs 105 mm lower than its headrail needs. Its hem shows 30 mm more below the folds than it would alone.",
    ]);
  });

  it("writes the figures of it down", () => {
    const figures = Object.fromEntries(shadeOf(planned, "c").workings.map(({ id, value }) => [id, value]));
    expect(figures).toMatchObject({
      "align.first-row": 125,
      "align.headrail-extra": 105,
      "align.hem-extra": 30,
    });
  });

  it("finds levels that cost little where the spacing is free", () => {
    const free = plan(roomOf(windows, true));
    const line = free.rooms[0]?.alignment;
    const gave =
      line?.windows.map(({ layout }) => (layout?.headrailExtraMm ?? 0) + (layout?.bottomExtraMm ?? 0)) ?? [];
    expect(line?.windows.map(({ follows }) => follows)).toEqual(["levels", "levels", "levels"]);
    expect(Math.max(...gave)).toBeLessThan(105);
  });
});

describe("what cannot follow", () => {
  const three = (odd: WindowInput) => [hung("a", 700, 1400), hung("b", 700, 1400), odd];

  it("a window whose height is not known is asked for it, and has the spacing", () => {
    const { opening, ...rest } = hung("c", 0, 1300);
    const { sillAboveFloorMm: _, ...unmeasured } = opening;
    const planned = plan(roomOf(three({ ...rest, opening: unmeasured }), true));
    expect(lineFindings(shadeOf(planned, "c")).map(({ id }) => id)).toContain("align.measure-floor");
    expect(planned.rooms[0]?.alignment?.windows[2]?.follows).toBe("spacing");
    const [a, , c] = planned.shades;
    expect(c?.grid.spacingsMm[0]).toBeCloseTo(a?.grid.spacingsMm[0] ?? 0, 9);
  });

  it("graduated folds keep their own rows", () => {
    const odd = hung("c", 700, 1400, { making: { fold: { gradeStepMm: 10 } } });
    const shade = shadeOf(plan(roomOf(three(odd), true)), "c");
    expect(lineFindings(shade)[0]).toMatchObject({ id: "align.own-rows", severity: "note" });
    expect(shade.grid).toEqual(shadeOf(plan(roomOf([odd], undefined)), "c").grid);
  });

  it("styles whose folds are not theirs to place keep their own, and are named", () => {
    const odd = hung("c", 700, 1400, { style: "hobbled" });
    const shade = shadeOf(plan(roomOf(three(odd), true)), "c");
    expect(lineFindings(shade)[0]?.text).toContain("hobbled");
    expect(shade.grid).toEqual(shadeOf(plan(roomOf([odd], undefined)), "c").grid);
  });

  it("a window left out keeps its own and is not judged", () => {
    const windows = three(hung("c", 333, 1711));
    const shade = shadeOf(plan(roomOf(windows, { without: ["c"] })), "c");
    expect(lineFindings(shade)).toEqual([]);
    expect(shade).toEqual(shadeOf(plan(roomOf(windows, undefined)), "c"));
  });

  it("a window alone has its own plan", () => {
    const [window] = three(hung("c", 333, 1711));
    if (window === undefined) throw new Error("invalid test");
    const aligned = plan(roomOf([window], true));
    expect(aligned.shades).toEqual(plan(roomOf([window], undefined)).shades);
    expect(lineFindings(aligned).map(({ id }) => id)).toEqual(["align.nothing-shared"]);
  });
});

describe("patterns", () => {
  const cloths: JobInput["cloths"] = [
    {
      id: "leaf",
      name: "Leaf",
      usableWidthMm: 1370,
      massGsm: 220,
      repeat: { verticalMm: 320, match: "straight" },
    },
  ];
  const leafy = (id: string, hemMm: number, lengthMm: number, making = {}) =>
    hung(id, hemMm, lengthMm, { face: "leaf", making });
  const level = ({ size, cloth }: ShadePlan) => {
    const motif = cloth.layers.find(({ layer }) => layer === "face")?.motif;
    return (size.topAboveFloorMm ?? Number.NaN) - (motif?.originYMm ?? Number.NaN);
  };
  const apart = (a: number, b: number) => Math.abs(a - b - Math.round((a - b) / 320) * 320);

  it("begin at the same heights above the floor", () => {
    const { shades, rooms } = plan(
      roomOf([leafy("a", 700, 1400), leafy("b", 650, 1300), leafy("c", 20, 2080)], true, { cloths }),
    );
    for (const shade of shades) expect(apart(level(shade), 2100)).toBeLessThan(0.5);
    expect(rooms[0]?.alignment?.motifs).toMatchObject([{ clothId: "leaf", repeatMm: 320, levelMm: 2100 }]);
  });

  it("follow a shade on which the maker placed it", () => {
    const { shades } = plan(
      roomOf([leafy("a", 700, 1400), leafy("b", 655, 1300, { pattern: { place: "hem" } })], true, { cloths }),
    );
    for (const shade of shades) expect(apart(level(shade), 655)).toBeLessThan(0.5);
  });

  it("that were placed apart say so, and can be let go", () => {
    const hem = { pattern: { place: "hem" as const } };
    const job = roomOf([leafy("a", 700, 1400, hem), leafy("b", 655, 1300, hem)], true, { cloths });
    const found = plan(job).shades.flatMap(lineFindings);
    expect(found.filter(({ id }) => id === "align.motif-elsewhere").map(({ shadeId }) => shadeId)).toEqual([
      "b",
    ]);
  });
});

describe("any room in line", () => {
  it("has rows at the heights that it names, to a tenth of a mark", () => {
    fc.assert(
      fc.property(likelyRoom, (job) => {
        const planned = plan(job);
        const line = planned.rooms[0]?.alignment;
        const mark = markMm(job.units.ruler);
        for (const { shadeId, follows, layout } of line?.windows ?? []) {
          const shade = shadeOf(planned, shadeId);
          const least = shade.workings.find(({ id }) => id === "shape.headrail-needed")?.value ?? 0;
          if (layout === undefined) continue;
          expect(shade.grid.rows.length).toBe(layout.rows);
          expect(shade.grid.headrailMm).toBeCloseTo(layout.headrailMm, 6);
          expect(shade.grid.raisedHeightMm).toBeCloseTo(layout.raisedMm, 6);
          for (const spacing of shade.grid.spacingsMm) expect(spacing).toBeCloseTo(line?.spacingMm ?? 0, 6);
          const { fold } = job.rooms[0]?.windows.find(({ id }) => id === shadeId)?.shade.making ?? {};
          if (fold?.rule !== "no-headrail" && fold?.headrailMm === undefined) {
            expect(shade.grid.headrailMm).toBeGreaterThan(least - 1e-6);
          }
          expect(layout.spacingMm).toBeLessThanOrEqual((fold?.largestSpacingMm ?? inches(8)) + 1e-6);
          if (follows !== "levels") continue;
          for (const height of heights(shade)) {
            const nearest = line?.levelsMm.reduce((best, mm) =>
              Math.abs(mm - height) < Math.abs(best - height) ? mm : best,
            );
            expect(Math.abs((nearest ?? Number.NaN) - height)).toBeLessThan(mark / 10);
            expect(Math.abs(height / mark - Math.round(height / mark))).toBeLessThan(1e-4);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  it("gives each window of the plan that a screen plans alone", () => {
    fc.assert(
      fc.property(fc.oneof(likelyRoom, fc.tuple(anyJob, anyInLine).map(withInLine)), (job) => {
        const { shades } = plan(job);
        shades.forEach((shade, w) => {
          expect(planWindow(job, 0, w)).toEqual(shade);
        });
      }),
      { numRuns: 12 },
    );
  });

  it("holds no number that is none", () => {
    fc.assert(
      fc.property(fc.tuple(anyJob, anyInLine).map(withInLine), (job) => {
        const { rooms } = plan(job);
        expect(JSON.parse(JSON.stringify(rooms))).toEqual(rooms);
      }),
      { numRuns: 25 },
    );
  });

  it("does not hang on the order along the wall", () => {
    fc.assert(
      fc.property(likelyRoom, (job) => {
        const [room] = job.rooms;
        fc.pre(room !== undefined);
        const turned = { ...job, rooms: [{ ...room, windows: [...room.windows].reverse() }] };
        const grids = ({ shades }: Plan) => new Map(shades.map(({ shadeId, grid }) => [shadeId, grid]));
        expect(grids(plan(turned))).toEqual(grids(plan(job)));
      }),
      { numRuns: 12 },
    );
  });

  it("cures what its remedies promise to cure", () => {
    fc.assert(
      fc.property(likelyRoom, (job) => {
        const planned = plan(job);
        for (const finding of [...planned.findings, ...planned.shades.flatMap(({ findings }) => findings)]) {
          if (!finding.id.startsWith("align.")) continue;
          for (const remedy of finding.remedies) {
            const patched = jobSchema.parse(
              applyPatch(JSON.parse(JSON.stringify(job)), remedy.patch as never),
            );
            const after = plan(patched);
            const left = [...after.findings, ...after.shades.flatMap(({ findings }) => findings)];
            const still = left.filter(({ id, shadeId }) => id === finding.id && shadeId === finding.shadeId);
            expect(still, `${finding.text} ${remedy.label}`).toEqual([]);
          }
        }
      }),
      { numRuns: 12 },
    );
  });
});
