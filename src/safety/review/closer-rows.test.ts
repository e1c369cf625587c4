import { describe, expect, it } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { partsOf, resolveShade } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import { CloserRows } from "./closer-rows.ts";

type Fold = { rule?: "half-fold" | "no-headrail" | "even-fold"; skirtMm?: number; rows?: number };

function shadeWith(fold: Fold & { largestSpacingMm?: number }) {
  const job = jobWith({
    opening: { widthsMm: [900], heightsMm: [1500] },
    shade: { mount: "to-size", making: { fold } },
  });
  const room = job.rooms[0];
  const window = room?.windows[0];
  const shade = plan(job).shades[0];
  if (room === undefined || window === undefined || shade === undefined)
    throw new Error("invalid job: empty");
  const resolved = resolveShade(job, partsOf(job), room, window, "/rooms/0/windows/0");
  return { resolved, size: shade.size, grid: shade.grid };
}

describe("closer rows are those that the style lays for the setting that asks for them", () => {
  it.each<[string, Fold]>([
    ["half folds", {}],
    ["half folds with a skirt", { skirtMm: 60 }],
    ["no headrail", { rule: "no-headrail" }],
    ["even folds", { rule: "even-fold" }],
    ["a fixed count", { rows: 7 }],
  ])("%s", (_, fold) => {
    const { resolved, size, grid } = shadeWith(fold);
    const closer = new CloserRows(resolved, size, grid);
    expect(closer.most).toBeGreaterThan(grid.rows.length + 2);
    for (let rows = grid.rows.length + 1; rows <= closer.most; rows++) {
      const [key, value] = closer.setting(rows);
      const laid = shadeWith({ ...fold, [key]: value }).grid;
      const foreseen = closer.grid(rows);
      expect(laid.rows, `${key} ${value}`).toHaveLength(rows);
      laid.rows.forEach((row, i) => {
        expectNear(foreseen.rows[i]?.yMm ?? 0, row.yMm, 1e-6, `row ${row.number} of ${rows}`);
      });
      expectNear(foreseen.travelMm, laid.travelMm, 1e-6, "travel");
    }
  });

  it("are asked for by a spacing on a mark of the ruler wherever one lies between this count and the one before", () => {
    const { resolved, size, grid } = shadeWith({});
    for (const [ruler, markMm] of [
      ["1 mm", 1],
      ["1/8 in", 25.4 / 8],
    ] as const) {
      const closer = new CloserRows({ ...resolved, units: { ...resolved.units, ruler } }, size, grid);
      for (let rows = grid.rows.length + 1; rows <= closer.most; rows++) {
        const [, spacingMm] = closer.setting(rows);
        const [foldMm, fewerMm] = [closer.foldMm(rows), closer.foldMm(rows - 1)];
        const marks = spacingMm / markMm;
        const onMark = Math.abs(marks - Math.round(marks)) * markMm < 0.001;
        const between = Math.ceil(foldMm / markMm) * markMm < fewerMm;
        expect(onMark, `${rows} rows by ${ruler}`).toBe(between);
        expect(spacingMm).toBeGreaterThanOrEqual(foldMm);
        expect(spacingMm).toBeLessThan(fewerMm);
      }
    }
  });

  it("are asked for by no less than their own spacing where a mark is no whole thousandth of a millimetre", () => {
    const { resolved, size, grid } = shadeWith({});
    const sixteenths = { ...resolved, units: { ...resolved.units, ruler: "1/16 in" } } as const;
    for (let marks = 100; marks < 120; marks++) {
      // Half folds: the length is the headrail, the skirt and 10 1/2 folds of so many marks.
      const foldMm = (marks * 25.4) / 16;
      const finishedLengthMm = grid.headrailMm + grid.skirtMm + 10.5 * foldMm;
      const [, spacingMm] = new CloserRows(sixteenths, { ...size, finishedLengthMm }, grid).setting(10);
      expect(spacingMm, `${marks}`).toBeGreaterThanOrEqual(foldMm - 1e-9);
    }
  });

  it("are asked for by less than the spacing that gives a row fewer, though that is on a mark", () => {
    const { resolved, size, grid } = shadeWith({});
    const eighths = { ...resolved, units: { ...resolved.units, ruler: "1/8 in" } } as const;
    for (let marks = 20; marks < 40; marks++) {
      const finishedLengthMm = grid.headrailMm + grid.skirtMm + (39.5 * marks * 25.4) / 8;
      const closer = new CloserRows(eighths, { ...size, finishedLengthMm }, grid);
      expect(closer.setting(40)[1], `${marks}`).toBeLessThan(closer.foldMm(39));
    }
  });

  it("are not offered where the spacing is fixed or the folds grow step by step", () => {
    for (const fold of [{ spacingMm: 180 }, { gradeStepMm: 10 }]) {
      const { resolved, size, grid } = shadeWith(fold as Fold);
      expect(new CloserRows(resolved, size, grid).most).toBe(grid.rows.length);
    }
  });
});
