import { describe, expect, test } from "vitest";
import { battens, hobbled, tucked } from "../../test/gallery/fold-style-windows.ts";
import { austrian, festoon, gatheredBalloon } from "../../test/gallery/gathered-windows.ts";
import {
  type Case,
  outside,
  pleatedBalloon,
  relaxed,
  tailed,
  tailedPressed,
} from "../../test/gallery/windows.ts";
import { expectNear } from "../../test/near.ts";
import { withRowsToRight } from "../../test/slanting-rows.ts";
import { catenaryOfArc } from "../mechanics/index.ts";
import { STYLE_SHAPES } from "../styles/shapes/index.ts";
import { cellsOf } from "./cell/cell.ts";
import { layLines } from "./cell/cell-grid.ts";
import { cellNet } from "./cell/cell-net.ts";
import { settleCell } from "./cell/settle-cell.ts";
import { columnCloth } from "./column-cloth.ts";
import { drapeShade } from "./drape-shade.ts";
import type { HangingCloth } from "./hanging-cloth.ts";
import { surfaceFigures } from "./surface-figures.ts";

const STYLES: Record<string, () => Case> = {
  flat: outside,
  ribbed: battens,
  hobbled,
  tucked,
  relaxed,
  tailed,
  "pleated balloon": pleatedBalloon,
  "gathered balloon": gatheredBalloon,
  festoon,
  austrian,
};
const SWAGGED = ["relaxed", "tailed", "pleated balloon", "gathered balloon", "festoon", "austrian"];
const HEIGHTS = [0, 0.4, 1];

const place = ({ across, placesMm }: HangingCloth, i: number, j: number) =>
  [0, 1, 2].map((c) => placesMm[3 * (j * across + i) + c] as number) as [number, number, number];

/** Cloth along one upright line, mm. */
function uprightMm(cloth: HangingCloth, i: number): number {
  let sum = 0;
  for (let j = 1; j < cloth.along; j++) {
    const [a, b] = [place(cloth, i, j - 1), place(cloth, i, j)];
    sum += Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  }
  return sum;
}

describe.each(Object.entries(STYLES))("%s", (name, make) => {
  const { shade } = make();
  const hangs = HEIGHTS.map((raise) => drapeShade(shade, raise));

  test("every place is a number; the rings are where the plan has them", () => {
    hangs.forEach(({ cloth, ringsMm }, k) => {
      expect(cloth.placesMm.every(Number.isFinite)).toBe(true);
      expect(cloth.placesMm).toHaveLength(3 * cloth.across * cloth.along);
      expect(ringsMm).toHaveLength(shade.grid.rows.length * shade.grid.columns.length);
      const lowest = Math.max(...ringsMm.map(([, y]) => y));
      const down = shade.grid.rows[0]?.yMm ?? 0;
      expectNear(lowest, down - (HEIGHTS[k] as number) * shade.grid.travelMm, 1e-6, "lowest row");
    });
  });

  test("twice drawn it is the same to the last digit", () => {
    expect(drapeShade(shade, 0.4).cloth.placesMm).toEqual(hangs[1]?.cloth.placesMm);
  });

  test("left and right are mirror images", () => {
    const width = shade.size.finishedWidthMm;
    for (const { cloth } of hangs) {
      for (let j = 0; j < cloth.along; j += 7) {
        const [left, right] = [place(cloth, 0, j), place(cloth, cloth.across - 1, j)];
        expectNear(left[0], width - right[0], 1e-6);
        expectNear(left[1], right[1], 1e-6);
        expectNear(left[2], right[2], 1e-6);
      }
    }
  });

  test("the cloth is as long at every height, and hangs from the board", () => {
    const lengths = hangs.map(({ cloth }) => uprightMm(cloth, Math.floor(cloth.across / 2)));
    for (const { cloth } of hangs) expectNear(place(cloth, 1, 0)[1], 0, 1e-6, "top line");
    // Gathers are drawn in half ripples only where they do not press flat, tucks as they stand out on flat cloth.
    if (shade.form.across === "gathered" || name === "tucked") return;
    const share = SWAGGED.includes(name) ? 0.01 : 0.003;
    for (const length of lengths) expectNear(length, lengths[0] as number, share * (lengths[0] as number));
  });
});

describe("cloth that hangs in swags", () => {
  test.each(SWAGGED)("%s: at rest, and before the pane", (name) => {
    const { shade } = (STYLES[name] as () => Case)();
    for (const raise of HEIGHTS) {
      const { method, sinkMm, cells } = drapeShade(shade, raise);
      expect(method).toBe("settled");
      expect(sinkMm).toBeLessThan(0.25);
      for (const { x } of cells)
        for (let at = 2; at < x.length; at += 3) expect(x[at]).toBeGreaterThan(-shade.board.depthMm - 2);
    }
  });

  test.each(["pleated balloon", "gathered balloon", "festoon", "austrian"])(
    "%s: the cloth of a bay stays before its own mirror image in the next one",
    (name) => {
      const { shade } = (STYLES[name] as () => Case)();
      for (const raise of HEIGHTS)
        for (const { cell, x } of drapeShade(shade, raise).cells)
          for (let at = 0; at < x.length; at += 3) expect(x[at]).toBeGreaterThan(cell.fromMm - 1.5);
    },
  );

  test("threads stretch by less than a hundredth, on the mean by a few thousandths", () => {
    const { shade } = pleatedBalloon();
    const { section } = STYLE_SHAPES[shade.style](shade, 0.4);
    const stretches = columnCloth(shade.form, shade.grid, section);
    const total = stretches.reduce((sum, { arcMm }) => sum + arcMm, 0);
    const [cell] = cellsOf(shade.form, shade.grid, shade.size.finishedWidthMm).cells;
    if (cell === undefined) throw new Error("no cell");
    const { grid, x } = settleCell(cell, stretches, { feel: shade.feel, paneMm: shade.board.depthMm });
    const across = cell.xMm.length;
    for (let i = 0; i < across; i++) {
      let sum = 0;
      for (let j = 1; j < grid.lines.length; j++) {
        const [a, b] = [3 * ((j - 1) * across + i), 3 * (j * across + i)];
        sum += Math.hypot(...[0, 1, 2].map((c) => (x[b + c] as number) - (x[a + c] as number)));
      }
      expectNear(sum, total, 0.004 * total, `upright ${i}`);
    }
  });

  test.each<[string, () => Case]>([
    ["sewn", tailed],
    ["pressed", tailedPressed],
    ["between poufs", pleatedBalloon],
  ])("pleats %s let nothing out that does not need it: no wider than the board anywhere", (_, make) => {
    const { shade } = make();
    for (const raise of HEIGHTS) {
      const { cloth } = drapeShade(shade, raise);
      for (let at = 0; at < cloth.placesMm.length; at += 3) {
        expect(cloth.placesMm[at]).toBeGreaterThan(-4);
        expect(cloth.placesMm[at]).toBeLessThan(shade.size.finishedWidthMm + 4);
      }
    }
  });

  test.each<[string, () => Case]>([
    ["sewn", tailed],
    ["pressed", tailedPressed],
  ])("let down, a stripe between pleats that are %s hangs plumb to the hem", (_, make) => {
    const { shade } = make();
    const { across, along, placesMm, clothMm } = drapeShade(shade, 0).cloth;
    const half = Math.ceil(across / 2);
    for (let i = 0; i < half; i++) {
      const leans = (mm: Float64Array, step: number) =>
        (mm[step * ((along - 1) * across + i)] as number) - (mm[step * i] as number);
      // As far from the middle on the cloth as it hangs, but for the few mm by which a pleat gapes: 100 and 300 lie folded in it.
      expectNear(leans(clothMm, 2), leans(placesMm, 3), 6, `upright ${i}`);
    }
  });

  // The catenary of its cloth over its span, and the inextensible thread as a bound that no shape can pass.
  test("an Austrian shade: every scallop hangs by its catenary, and no thread of weft farther from its tapes than it is long", () => {
    const { shade } = austrian();
    const [swag] = shade.form.swags;
    if (swag === undefined) throw new Error("no swag");
    const spanMm = swag.toMm - swag.fromMm;
    const hangs = catenaryOfArc(spanMm, swag.arcMm);
    if (hangs.kind !== "hangs") throw new Error(hangs.kind);
    const lowered = drapeShade(shade, 0);
    for (const { kind, surfaceMm } of surfaceFigures(shade, 0, lowered))
      if (kind === "dip") expectNear(surfaceMm, hangs.value.sagMm, 0.1 * hangs.value.sagMm);
    const mostMm = Math.sqrt((swag.arcMm / 2) ** 2 - (spanMm / 2) ** 2);
    for (const raise of HEIGHTS)
      for (const { cell, grid, x } of drapeShade(shade, raise).cells) {
        const across = cell.xMm.length;
        for (let j = 1; j < grid.lines.length; j++) {
          const apart = (c: number) =>
            (x[3 * (j * across + across - 1) + c] as number) - (x[3 * j * across + c] as number);
          expect(Math.hypot(apart(1), apart(2))).toBeLessThan(1.05 * mostMm);
        }
      }
  });

  test("an Austrian shade: let down its tapes hang straight and as long as they were drawn up", () => {
    const { shade } = austrian();
    const tapeMm = shade.form.stretches.reduce((sum, { row, cordMm }) => sum + (row > 0 ? cordMm : 0), 0);
    const { cells } = drapeShade(shade, 0);
    for (const { cell, grid, x } of cells) {
      const across = cell.xMm.length;
      let mm = 0;
      for (let j = 1; j < grid.lines.length && grid.lines[j]?.swag !== undefined; j++) {
        const [a, b] = [3 * (j - 1) * across, 3 * j * across];
        mm += Math.hypot(...[0, 1, 2].map((c) => (x[b + c] as number) - (x[a + c] as number)));
      }
      expectNear(mm, tapeMm, 0.01 * tapeMm);
    }
  });

  test("a cell weighs what its cloth weighs: mass by area, all the way to the hem", () => {
    const { shade } = gatheredBalloon();
    const { section } = STYLE_SHAPES[shade.style](shade, 0.5);
    const stretches = columnCloth(shade.form, shade.grid, section);
    const [cell] = cellsOf(shade.form, shade.grid, shade.size.finishedWidthMm).cells;
    if (cell === undefined) throw new Error("no cell");
    const { loadN } = cellNet(cell, layLines(stretches), shade.feel);
    const lengthMm = shade.size.finishedLengthMm + (shade.form.allowances.at(-1)?.lengthMm ?? 0);
    const areaMm2 = (lengthMm * (shade.form.swags[0]?.arcMm ?? 0)) / 2;
    const weightN = loadN.reduce((sum, newton) => sum + newton, 0);
    expectNear(weightN, areaMm2 * shade.feel.weightNPerMm2, 0.002 * weightN);
  });

  test.each(SWAGGED)("%s: as heavy and as long at every height, to a millionth", (name) => {
    const { shade } = (STYLES[name] as () => Case)();
    const { cells } = cellsOf(shade.form, shade.grid, shade.size.finishedWidthMm);
    const weighed = [0, 0.25, 0.6, 1].map((raise) => {
      const { section } = STYLE_SHAPES[shade.style](shade, raise);
      const stretches = columnCloth(shade.form, shade.grid, section);
      const alongMm = stretches.reduce((sum, { arcMm }) => sum + arcMm, 0);
      const weightN = cells.reduce((sum, cell) => {
        const { loadN } = cellNet(cell, layLines(stretches), shade.feel);
        return sum + loadN.reduce((all, newton) => all + newton, 0);
      }, 0);
      return { alongMm, weightN };
    });
    for (const { alongMm, weightN } of weighed) {
      expectNear(alongMm, weighed[0]?.alongMm ?? 0, 1e-6 * alongMm);
      // Where the width opens towards the hem the trapezoids between lines are summed as they lie: a little more or less.
      const share = shade.form.across === "gathered" ? 1e-6 : 2e-3;
      expectNear(weightN, weighed[0]?.weightN ?? 0, share * weightN);
    }
  });

  test("the middle of a relaxed shade sinks below its columns as it is raised, and no lower than the floor it had", () => {
    const { shade } = relaxed();
    const { cloth } = drapeShade(shade, 0.6);
    const middle = Math.floor(cloth.across / 2);
    const lowest = Math.max(...Array.from({ length: cloth.along }, (_, j) => place(cloth, middle, j)[1]));
    const row = (shade.grid.rows[0]?.yMm ?? 0) - 0.6 * shade.grid.travelMm;
    expect(lowest).toBeGreaterThan(row + shade.grid.bottomSectionMm * 0.5);
    expect(lowest).toBeLessThan(shade.size.finishedLengthMm);
  });
});

/** Plane geometry by hand: a row that is 90 mm lower over 900 mm of width falls a tenth of what lies across. */
describe("rows that slant", () => {
  const { shade } = withRowsToRight([100, 300, 500]);

  test.each(HEIGHTS)("raised %f: each ring hangs by its own column, and the cloth lies in it", (raise) => {
    const { cloth, ringsMm, cordsMm } = drapeShade(shade, raise);
    ringsMm.forEach(([x, y], k) => {
      const [, middleY] = ringsMm[k - (k % 3) + 1] as [number, number, number];
      expectNear(y - middleY, (x - 450) / 10, 1e-6, `ring ${k + 1}`);
    });
    expectNear((cordsMm[2]?.from[1] ?? 0) - (cordsMm[0]?.from[1] ?? 0), 80, 1e-6, "cords");
    const [x, y] = ringsMm[0] as [number, number, number];
    const near = Array.from({ length: cloth.along }, (_, j) => {
      const [a, b] = [place(cloth, 0, j), place(cloth, cloth.across - 1, j)];
      return Math.hypot(a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]) - y, a[2]);
    });
    expect(Math.min(...near)).toBeLessThan(1e-6);
    // Its hem is level, and stays as low as the plan has it.
    if (raise > 0) return;
    const hem = cloth.along - 1;
    expectNear(place(cloth, 0, hem)[1], 1500, 1e-6);
    expectNear(place(cloth, cloth.across - 1, hem)[1], 1500, 1e-6);
  });
});
